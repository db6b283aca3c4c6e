import { csvCell } from '../../core/report/csv-cell.ts';
import { indentedLines } from '../../core/report/text-rows.ts';
import type { Library } from '../library/library.ts';
import { EXIT, type Command } from './command.ts';
import { refuse } from './read-input.ts';
import { LIBRARY_OPTION, withLibrary, type LibraryRoom } from './with-library.ts';
import { issue } from '../../core/issue/issue.ts';

type Row = Readonly<Record<string, string | number | null>>;

const LISTS = ['students', 'lessons', 'logs', 'approaches'] as const;
type ListName = (typeof LISTS)[number];

export const list: Command = {
  name: 'list',
  usage: '[students|lessons|logs|approaches] [--student NAME] [--format text|csv|json] [--library FOLDER]',
  purpose: 'list what the library holds; the students when not said',
  options: {
    ...LIBRARY_OPTION,
    student: { value: 'the student whose lessons, logs or approaches are meant' },
    format: { value: 'text, csv or json', oneOf: ['text', 'csv', 'json'] },
  },
  minFiles: 0,
  maxFiles: 1,
  async run(args, output) {
    const { files, options } = args;
    const which = LISTS.find((name) => name === (files[0] ?? 'students'));
    if (!which)
      return refuse(
        issue('refusal', 'arguments', `There is no list of "${files[0]}".`, {
          tip: `Use ${LISTS.join(', ')}.`,
        }),
        output,
      );
    return withLibrary(args, 'existing', output, async (library, room) => {
      const rows = rowsOf(which, options['student']?.[0], library, room);
      await output.answer(written(which, rows, options['format']?.[0] ?? 'text'));
      return EXIT.done;
    });
  },
};

function rowsOf(which: ListName, name: string | undefined, library: Library, room: LibraryRoom): Row[] {
  const student = name === undefined ? null : room.personNamed(library, 'student', name);
  if (which === 'lessons') return room.listLessons(library, student?.id ?? null);
  if (which === 'logs') return room.listLogs(library, student?.id ?? null);
  if (which === 'approaches') return room.listApproaches(library, student?.id ?? null);
  return room.listStudents(library).filter((row) => student === null || row.student === student.name);
}

function written(which: ListName, rows: readonly Row[], format: string): string {
  if (format === 'json') return `${JSON.stringify(rows, null, 2)}\n`;
  if (format === 'csv') return csvText(rows);
  if (rows.length === 0) return `The library holds no ${which} like that.\n`;
  const lines = which === 'approaches' ? rows.flatMap(approachLines) : tableLines(TABLES[which], rows);
  return `${lines.join('\n')}\n`;
}

function csvText(rows: readonly Row[]): string {
  const columns = Object.keys(rows[0] ?? {});
  const lines = rows.map((row) => columns.map((column) => csvCell(row[column] ?? null)).join(','));
  return columns.length === 0 ? '' : `${[columns.join(','), ...lines].join('\n')}\n`;
}

type Column = readonly [head: string, key: string];

const TABLES: Readonly<Record<Exclude<ListName, 'approaches'>, readonly Column[]>> = {
  students: [
    ['Student', 'student'],
    ['Lessons', 'lessons'],
    ['Approaches', 'approaches'],
    ['Last flown', 'last'],
  ],
  lessons: [
    ['Date', 'date'],
    ['Student', 'student'],
    ['Aircraft', 'aircraft'],
    ['Conditions', 'conditions'],
    ['Logs', 'logs'],
    ['Approaches', 'approaches'],
    ['Objective', 'objective'],
  ],
  logs: [
    ['Date', 'date'],
    ['Student', 'student'],
    ['Approaches', 'approaches'],
    ['Hash', 'hash'],
    ['Log', 'log'],
  ],
};

/** A table with columns as wide as what they hold; numbers stand to the right. */
function tableLines(columns: readonly Column[], rows: readonly Row[]): string[] {
  const cells = rows.map((row) => columns.map(([, key]) => row[key] ?? '–'));
  const widths = columns.map(([head], i) =>
    cells.reduce((width, line) => Math.max(width, String(line[i]).length), head.length),
  );
  const line = (values: readonly (string | number)[]) =>
    values
      .map((value, i) =>
        typeof value === 'number' ? String(value).padStart(widths[i]!) : value.padEnd(widths[i]!),
      )
      .join('  ')
      .trimEnd();
  return [line(columns.map(([head]) => head)), ...cells.map(line)];
}

/** An approach in two lines or three: what it was, and the sentence about it. */
function approachLines(row: Row): string[] {
  const who = row['student'] ?? 'no student named';
  const grade =
    row['level'] === null
      ? 'not graded'
      : `level ${range(row['levelLow']!, row['level']!, row['levelHigh']!)}, score ${range(row['scoreLow']!, row['score']!, row['scoreHigh']!)}`;
  const head = [
    row['date'],
    String(row['startUtc']).slice(11, 16),
    who,
    row['facility'],
    row['outcome'],
    grade,
  ];
  return [head.join('  '), ...indentedLines('    ', String(row['summary']))];
}

/** The figure, or where the log leaves it open from what to what. */
function range(low: string | number, value: string | number, high: string | number): string {
  return low === high ? String(value) : `${low} to ${high}`;
}
