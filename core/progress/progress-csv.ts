import { csvCell } from '../report/csv-cell.ts';
import type { LessonCell, Progress, ProgressLine } from './progress.ts';

const COLUMNS = [
  'student',
  'standard',
  'engineVersion',
  'flown',
  'criterion',
  'title',
  'lesson',
  'date',
  'measure',
  'unit',
  'value',
  'approaches',
  'insideShareByDistance',
  'rms',
  'met',
  'notMet',
  'unclear',
  'notAssessed',
  'change',
  'slopePerLesson',
  'slopeLow',
  'slopeHigh',
] as const;

type Row = Readonly<Record<(typeof COLUMNS)[number], string | number | null>>;

/** A record as a table, one line a criterion and lesson; the trend of a criterion stands on each of its lines. */
export function progressCsv(progress: Progress): string {
  const rows = progress.lines.flatMap((line) =>
    line.lessons.map((cell, i) => rowOf(progress, line, cell, i)),
  );
  const lines = rows.map((row) => COLUMNS.map((column) => csvCell(row[column])).join(','));
  return `${[COLUMNS.join(','), ...lines].join('\n')}\n`;
}

function rowOf(
  { student, compared, lessons }: Progress,
  line: ProgressLine,
  cell: LessonCell,
  i: number,
): Row {
  const { verdicts } = cell;
  const { trend } = line;
  return {
    student,
    standard: compared!.standard.id,
    engineVersion: compared!.engineVersion,
    flown: compared!.flown,
    criterion: line.id,
    title: line.title,
    lesson: i + 1,
    date: lessons[i]!.date,
    measure: line.measure,
    unit: line.unit,
    value: cell.value,
    approaches: cell.approaches,
    insideShareByDistance: cell.insideShare,
    rms: cell.rms,
    met: verdicts.met,
    notMet: verdicts['not-met'],
    unclear: verdicts.unclear,
    notAssessed: verdicts['not-assessed'],
    change: trend.change,
    slopePerLesson: trend.slopePerLesson,
    slopeLow: trend.interval?.low ?? null,
    slopeHigh: trend.interval?.high ?? null,
  };
}
