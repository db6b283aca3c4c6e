import { issue, type Issue } from '../../core/issue/issue.ts';
import { dayOf, decideOrder } from '../../core/log/date-order.ts';
import { readDate, type DateText } from '../../core/log/date-text.ts';
import { nameInOrder } from '../bridge/names.ts';
import { leftOut, readTable, type TableLine } from './table-file.ts';

/** Who was to fly which aircraft when. */
export interface Booking {
  readonly line: number;
  /** As 2026-05-03. */
  readonly date: string;
  /** The aircraft's registration, as written. */
  readonly aircraft: string;
  readonly student: string;
  readonly instructor: string | null;
  readonly lessonNumber: string | null;
  readonly objective: string | null;
}

export interface Bookings {
  readonly bookings: readonly Booking[];
  /** A refusal where they cannot be used, and a warning for each line that was left out. */
  readonly issues: readonly Issue[];
}

/** English, German, French and Spanish, as the columns of a log. */
const COLUMNS = {
  date: ['date', 'day', 'datum', 'tag', 'jour', 'fecha', 'dia'],
  aircraft: [
    'aircraft',
    'registration',
    'aircraftregistration',
    'tailnumber',
    'flugzeug',
    'kennzeichen',
    'avion',
    'immatriculation',
    'aeronave',
    'matricula',
  ],
  student: ['student', 'studentname', 'pilot', 'schuler', 'flugschuler', 'eleve', 'alumno'],
  instructor: ['instructor', 'flightinstructor', 'fluglehrer', 'instructeur'],
  lessonNumber: ['lesson', 'lessonnumber', 'number', 'syllabusnumber', 'lektion', 'lecon', 'leccion'],
  objective: ['objective', 'objectives', 'aim', 'ziel', 'objectif', 'objetivo'],
};
const NEEDED = ['date', 'aircraft', 'student'] as const;

/** Bookings from a table with a header: date, aircraft and student; instructor, lesson number and objective if known. */
export function bookingsOf(text: string): Bookings {
  const table = readTable(text, COLUMNS, (found) => NEEDED.every((column) => found.has(column)));
  if (!table) return { bookings: [], issues: [NO_BOOKINGS] };
  const dates = table.lines.map((line) => dateOn(line));
  const { order, guessed } = decideOrder(
    dates.filter((date) => date !== null),
    undefined,
  );
  if (guessed) return { bookings: [], issues: [UNCLEAR_DATES] };
  const bookings: Booking[] = [];
  const issues = [...table.issues];
  for (const [i, line] of table.lines.entries()) {
    const date = dates[i] ? dayText(dayOf(dates[i], order)) : null;
    const read = bookingOn(line, date);
    if ('severity' in read) issues.push(read);
    else bookings.push(read);
  }
  issues.sort((a, b) => a.firstLine! - b.firstLine!);
  return { bookings, issues };
}

const NO_BOOKINGS = issue(
  'refusal',
  'bookings-no-columns',
  'No line of it is a header with the columns date, aircraft and student.',
  { tip: 'Begin with a line such as "date,aircraft,student,instructor,lesson,objective".' },
);
const UNCLEAR_DATES = issue(
  'refusal',
  'bookings-unclear-dates',
  'Its dates can be read with the day first or with the month first.',
  { tip: 'Write them as 2026-05-03.' },
);

type Line = TableLine<keyof typeof COLUMNS>;

function dateOn(line: Line): DateText | null {
  const text = line.text('date');
  const date = readDate(text);
  // A time of day may follow.
  return date && /^(?:$|[\sT])/.test(text.slice(date.length)) ? date : null;
}

function dayText(epochDay: number): string | null {
  return Number.isNaN(epochDay) ? null : new Date(epochDay * 86_400_000).toISOString().slice(0, 10);
}

function bookingOn(entry: Line, date: string | null): Booking | Issue {
  const { line } = entry;
  const [aircraft, student] = [entry.text('aircraft'), nameInOrder(entry.text('student'))];
  if (date === null) return leftOut(line, `"${entry.text('date')}" on line ${line} is no day`);
  if (!/[\p{L}\p{N}].*[\p{L}\p{N}]/u.test(aircraft)) return leftOut(line, `line ${line} names no aircraft`);
  if (student === '') return leftOut(line, `line ${line} names no student`);
  return {
    line,
    date,
    aircraft,
    student,
    instructor: nameInOrder(entry.text('instructor')) || null,
    lessonNumber: entry.text('lessonNumber') || null,
    objective: entry.text('objective') || null,
  };
}
