import { refused, usable, type Outcome } from '../../core/issue/issue.ts';
import type { Ruling, StudentFrom } from '../library/assign-rules.ts';
import type { Booking } from '../library/bookings.ts';
import type { FirstDays } from '../library/first-days.ts';
import type { ImportAsked } from '../library/import-log.ts';
import type { Library } from '../library/library.ts';
import type { Arguments, Option, Output } from './command.ts';
import { readText, tell } from './read-input.ts';
import { counted, type LibraryRoom } from './with-library.ts';

/** What says of each log of an import whose it is. */
export const RULE_OPTIONS: Readonly<Record<string, Option>> = {
  'student-from': {
    value: 'folder (one that is named after a student), or "column:HEADER" (what the log itself holds there)',
  },
  bookings: {
    value: 'a CSV of date, aircraft and student, and of instructor, lesson and objective if you like',
  },
  'add-students': { value: 'yes, to add students who are not on the roster', oneOf: ['yes'] },
};

/** How many file names stand after a reason. */
const NAMES_MAX = 5;

interface LogToRule {
  readonly below: readonly string[];
  readonly bytes: Uint8Array;
  readonly asked: ImportAsked;
}

/** What is asked of a log besides what is asked of all, and what is told once it is kept. */
interface Ruled extends Required<Pick<ImportAsked, 'rule'>> {
  kept(): void;
}

/** The rules of one import, and what came of them. */
export class ImportRules {
  readonly #from: StudentFrom | null;
  readonly #bookings: readonly Booking[] | null;
  readonly #addsStudents: boolean;
  /** How many logs each student was given. */
  readonly #given = new Map<string, number>();
  /** Logs that were kept with nobody, by why. */
  readonly #left = new Map<string, string[]>();
  readonly #remarks: string[] = [];

  constructor(from: StudentFrom | null, bookings: readonly Booking[] | null, addsStudents: boolean) {
    this.#from = from;
    this.#bookings = bookings;
    this.#addsStudents = addsStudents;
  }

  /** The rule for one log, and what is to be called once it is kept; several logs may be under way. */
  begin(log: LogToRule, library: Library, room: LibraryRoom): Ruled {
    let ruling: Ruling | null = null;
    const from = this.#from;
    const rule = (days: FirstDays): Ruling => {
      const { below, bytes, asked } = log;
      const column = from?.by === 'column' ? room.columnValues(bytes, from.header, asked.settings) : null;
      return (ruling = room.ruleFor(
        { path: below, statedDate: asked.date, ...days, column },
        {
          studentFrom: from,
          bookings: this.#bookings,
          // Asked anew for each log: one may have brought a student.
          students: room.namesOf(library, 'student'),
          instructors: room.namesOf(library, 'instructor'),
          addsStudents: this.#addsStudents,
        },
      ));
    };
    return { rule, kept: () => ruling && this.#kept(log, ruling, room.studentOfLog(library, log.bytes)) };
  }

  /** Notes what came of a log, now that it is kept. */
  #kept(log: LogToRule, ruling: Ruling, student: string | null): void {
    const name = log.below.join('/');
    this.#remarks.push(...ruling.remarks.map((remark) => `${name}: ${remark}`));
    // One that was here already may be somebody's, whatever is found now.
    if (student !== null) this.#given.set(student, (this.#given.get(student) ?? 0) + 1);
    else this.#left.set(ruling.why, [...(this.#left.get(ruling.why) ?? []), name]);
  }

  /** Who was given how many, as another sentence of the summary; empty where nobody was. */
  givenTo(): string {
    const each = [...this.#given].map(([student, count]) => `${student} ${count}`);
    return each.length === 0 ? '' : ` Given to ${each.join(', ')}.`;
  }

  /** Says which logs are nobody's and why, and what else there is to say. */
  tell(output: Output): void {
    for (const remark of this.#remarks) output.message(remark);
    const count = [...this.#left.values()].flat().length;
    if (count === 0) return;
    output.message(`${counted(count, 'log')} kept with nobody; \`halfdot assign\` gives them to somebody:`);
    for (const [why, names] of this.#left) output.message(`  ${why}: ${fewOf(names)}`);
  }
}

function fewOf(names: readonly string[]): string {
  const more = names.length - NAMES_MAX;
  return more > 1 ? `${names.slice(0, NAMES_MAX).join(', ')} and ${more} more` : names.join(', ');
}

/** The rules that are asked for; null where none are. */
export async function importRules(args: Arguments, output: Output): Promise<Outcome<ImportRules | null>> {
  const { options } = args;
  const [from] = options['student-from'] ?? [];
  const [path] = options['bookings'] ?? [];
  if (from === undefined && path === undefined)
    return options['add-students']
      ? refused('arguments', '--add-students goes with --student-from or --bookings.')
      : usable(null);
  if (options['student'])
    return refused(
      'arguments',
      `--student says whose all logs are, and --${from === undefined ? 'bookings' : 'student-from'} whose each is.`,
      { tip: 'Give one of them.' },
    );
  const studentFrom = from === undefined ? null : studentFromOf(from);
  if (studentFrom === undefined)
    return refused('arguments', `--student-from is folder or "column:HEADER"; "${from}" is neither.`);
  const bookings = path === undefined ? usable(null) : await bookingsIn(path, output);
  if (!bookings.ok) return bookings;
  return usable(new ImportRules(studentFrom, bookings.value, options['add-students'] !== undefined));
}

function studentFromOf(text: string): StudentFrom | undefined {
  if (text === 'folder') return { by: 'folder' };
  const header = /^column:(.*)$/.exec(text)?.[1]?.trim();
  return header ? { by: 'column', header } : undefined;
}

async function bookingsIn(path: string, output: Output): Promise<Outcome<readonly Booking[]>> {
  const text = readText(path);
  if (!text.ok) return text;
  const { bookingsOf } = await import('../library/entry.ts');
  const { bookings, issues } = bookingsOf(text.value);
  const refusal = issues.find(({ severity }) => severity === 'refusal');
  if (refusal) {
    const { code, message, tip } = refusal;
    return refused(code, `${path} cannot be used: ${message}`, { tip });
  }
  tell(issues, output);
  return usable(bookings);
}
