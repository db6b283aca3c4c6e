import type { Booking } from './bookings.ts';
import { isDay } from './day.ts';
import type { FirstDays } from './first-days.ts';
import { isSameName, nameInOrder, nameKeys } from '../bridge/names.ts';

/** What a log's place and content may say of whose it is. */
export interface Clues extends FirstDays {
  /** Folders below the named one, outermost first, and the file's name at the end. */
  readonly path: readonly string[];
  /** The folder that was named, where what stands around it is not the user's own; else null. */
  readonly chosenFolder?: string | null;
  /** The day that was stated for the lesson, as 2026-05-03; null where none was. */
  readonly statedDate: string | null;
  /** The different values of the column that is asked; null where the log has no such column. */
  readonly column: readonly string[] | null;
}

/** Where a student's name is looked for. */
export type StudentFrom = { readonly by: 'folder' } | { readonly by: 'column'; readonly header: string };

/** By what logs are given to somebody. */
export interface Rules {
  readonly studentFrom: StudentFrom | null;
  readonly bookings: readonly Booking[] | null;
  /** Names on the roster. */
  readonly students: readonly string[];
  readonly instructors: readonly string[];
  /** Whether a student who is not on the roster comes onto it. */
  readonly addsStudents: boolean;
}

/** Whose a log is, and what its lesson is told. Nothing of it is a guess between two. */
export interface Ruling {
  /** By the name on the roster; null where nothing or no one thing was found. */
  readonly student: string | null;
  /** Of the lesson, where a folder says it; null: the log's own. */
  readonly date: string | null;
  readonly aircraft: string | null;
  readonly instructor: string | null;
  readonly lessonNumber: string | null;
  readonly objective: string | null;
  /** How the student was found, or why none was, as the end of a sentence about the log. */
  readonly why: string;
  /** What else is worth saying, a sentence each. */
  readonly remarks: readonly string[];
}

/** What one source says of the student: a name, perhaps one, nothing, or more than one thing. */
type Finding = Named | { readonly says: 'nothing' | 'several'; readonly why: string };

interface Named {
  readonly says: 'name' | 'perhaps';
  readonly name: string;
  readonly isListed: boolean;
  readonly why: string;
}

/** Whose a log is by its folders, by a column of it, by the bookings of its day, or by what those that are asked agree on. */
export function ruleFor(clues: Clues, rules: Rules): Ruling {
  const byFolder = rules.studentFrom?.by === 'folder';
  const dates = byFolder ? folderDates(clues) : [];
  const date = dates.length === 1 ? dates[0]! : null;
  const day = clues.statedDate ?? date ?? clues.firstDay;
  const booked = rules.bookings && bookedFor(clues, day, rules.bookings);
  const findings = [
    ...(rules.studentFrom ? [byStudentFrom(rules.studentFrom, clues, rules.students)] : []),
    ...(booked ? [byBookings(booked, day, clues, rules)] : []),
  ];
  const { student, why } = agreed(findings, rules.addsStudents);
  const remarks =
    dates.length > 1 && clues.statedDate === null
      ? [`Its folders name several days (${dates.join(', ')}): the log's own is taken.`]
      : [];
  const nobody = {
    student: null,
    date,
    aircraft: null,
    instructor: null,
    lessonNumber: null,
    objective: null,
  };
  if (student === null || !booked || booked.length === 0) return { ...nobody, student, why, remarks };
  return bookedRuling({ ...nobody, student, why, remarks }, booked, rules);
}

/** The folders that may tell of the log; the one that was chosen where those below it are days and figures alone. */
function tellingFolders({ path, chosenFolder = null }: Clues): readonly string[] {
  const below = path.slice(0, -1);
  return chosenFolder === null || below.some((folder) => !isInFigures(folder))
    ? below
    : [chosenFolder, ...below];
}

function isInFigures(folder: string): boolean {
  return !/\p{L}/u.test(folder);
}

/** The days that are folders of the path, each once. */
function folderDates(clues: Clues): string[] {
  const dates = tellingFolders(clues).map((folder) =>
    folder.trim().replace(/^(\d{4})(\d\d)(\d\d)$/, '$1-$2-$3'),
  );
  return [...new Set(dates.filter(isDay))];
}

function byStudentFrom(from: StudentFrom, clues: Clues, students: readonly string[]): Finding {
  return from.by === 'folder' ? byFolders(clues, students) : byColumn(from.header, clues.column, students);
}

function byFolders(clues: Clues, students: readonly string[]): Finding {
  const folders = tellingFolders(clues);
  const named = students.filter((student) => folders.some((folder) => isSameName(folder, student)));
  if (named.length > 1) return { says: 'several', why: `its folders can be ${inWords(named)}` };
  if (named.length === 1)
    return { says: 'name', name: named[0]!, isListed: true, why: 'a folder is named so' };
  const likely = newName(clues.path.slice(0, -1));
  if (likely !== null) {
    const name = nameInOrder(likely.replaceAll('_', ' '));
    return { says: 'perhaps', name, isListed: false, why: 'a folder is named so' };
  }
  return { says: 'nothing', why: 'no folder of its path is the name of a student on the roster' };
}

/** The one folder that may be the name of somebody new: it stands right above the log, or above its days. */
function newName(below: readonly string[]): string | null {
  const [name, ...others] = below.filter(isLikeName);
  const innermost = below.findLast((folder) => !isInFigures(folder));
  return name !== undefined && others.length === 0 && name === innermost ? name : null;
}

/** Whether a folder that is nobody's on the roster may be a name: two words or more, no figures, and no thing. */
function isLikeName(folder: string): boolean {
  const words = (nameKeys(folder)[0] ?? '').split(' ');
  return !/\d/.test(folder) && words.length > 1 && !words.some((word) => THINGS.has(word));
}

/** What folders of logs are called after. */
const THINGS: ReadonlySet<string> = new Set(
  [
    'app approach approaches backup class course csv data download downloads export exports files flight flights',
    'folder gpx group import lesson lessons log logs new old recorder recordings term track tracks training',
  ].flatMap((line) => line.split(' ')),
);

function byColumn(header: string, values: readonly string[] | null, students: readonly string[]): Finding {
  if (values === null) return { says: 'nothing', why: `it has no column "${header}"` };
  const written = different(values.map(nameInOrder));
  if (written.length === 0) return { says: 'nothing', why: `its column "${header}" is empty` };
  if (written.length > 1) return { says: 'several', why: `its column "${header}" holds ${inWords(written)}` };
  return listed(written[0]!, students, `its column "${header}" says so`);
}

/** A name, by its spelling on the roster. */
function listed(name: string, students: readonly string[], why: string): Finding {
  const [one, ...others] = students.filter((student) => isSameName(student, name));
  if (others.length > 0) return { says: 'several', why: `"${name}" can be ${inWords([one!, ...others])}` };
  return { says: 'name', name: one ?? name, isListed: one !== undefined, why };
}

/** The bookings of a day for the aircraft that the path names; of no aircraft where it names none of them. */
function bookedFor({ path }: Clues, day: string | null, bookings: readonly Booking[]): readonly Booking[] {
  return bookings.filter(({ date, aircraft }) => date === day && path.some((part) => holds(part, aircraft)));
}

/** Whether a registration stands in a text, alone and with any mark or none between its characters. */
function holds(text: string, registration: string): boolean {
  const characters = [...registration.toUpperCase()].filter((character) => /[\p{L}\p{N}]/u.test(character));
  const pattern = new RegExp(`(?<![\\p{L}\\p{N}])${characters.join('[-_. ]?')}(?![\\p{L}\\p{N}])`, 'u');
  return pattern.test(text.toUpperCase());
}

function noBooking(day: string | null, { path }: Clues, bookings: readonly Booking[]): Finding {
  if (day === null) return { says: 'nothing', why: 'it names no day to look for in the bookings' };
  if (!bookings.some(({ date }) => date === day))
    return { says: 'nothing', why: `there is no booking on ${day}` };
  const where =
    path.length > 1 ? 'neither its folders nor its file name hold' : 'its file name does not hold';
  return { says: 'nothing', why: `${where} the registration of an aircraft that was booked on ${day}` };
}

function byBookings(booked: readonly Booking[], day: string | null, clues: Clues, rules: Rules): Finding {
  if (booked.length === 0) return noBooking(day, clues, rules.bookings!);
  const isOwnDay = clues.statedDate === null && day === clues.firstDay;
  const around = isOwnDay ? clues.otherDays : [];
  const other = around.flatMap((one) => bookedFor(clues, one, rules.bookings!));
  const names = different([...booked, ...other].map(({ student }) => student));
  if (other.length === 0 || names.length === 1) return ofBookings(booked, rules);
  const days = [day!, ...around].sort();
  return {
    says: 'several',
    why: `its times do not say whether it is of ${inWords(days)}, booked for ${inWords(names)}`,
  };
}

function ofBookings(booked: readonly Booking[], { students }: Rules): Finding {
  const names = different(booked.map(({ student }) => student));
  const [{ line, date, aircraft }] = booked as [Booking];
  if (names.length > 1) return { says: 'several', why: `on ${date} it can be booked for ${inWords(names)}` };
  return listed(names[0]!, students, `line ${line} of the bookings says so of ${aircraft}`);
}

/** What all sources agree on; those that say nothing are not counted. */
function agreed(findings: readonly Finding[], addsStudents: boolean): Pick<Ruling, 'student' | 'why'> {
  const several = findings.find(({ says }) => says === 'several');
  if (several) return { student: null, why: several.why };
  const named = (says: Named['says']) =>
    findings.filter((finding): finding is Named => finding.says === says);
  const names = named('name');
  // A folder that nobody on the roster is called may be called after anything.
  const first = names[0] ?? named('perhaps')[0];
  if (!first) return { student: null, why: findings.map(({ why }) => why).join(', and ') };
  const other = names.find(({ name }) => !isSameName(name, first.name));
  if (other)
    return {
      student: null,
      why: `it can be ${first.name} (${first.why}) and ${other.name} (${other.why})`,
    };
  if (!first.isListed && !addsStudents)
    return { student: null, why: `"${first.name}" is not on the roster (${first.why})` };
  return { student: first.name, why: first.why };
}

/** What the bookings tell the lesson: of two for one student, what both say. */
function bookedRuling(ruling: Ruling, booked: readonly Booking[], { instructors }: Rules): Ruling {
  const same = (key: 'aircraft' | 'instructor' | 'lessonNumber' | 'objective') => {
    const values = new Set(booked.map((booking) => booking[key]));
    return values.size === 1 ? booked[0]![key] : null;
  };
  const written = same('instructor');
  const known = written === null ? [] : instructors.filter((name) => isSameName(name, written));
  const remarks =
    written === null || known.length === 1
      ? ruling.remarks
      : [
          ...ruling.remarks,
          `The instructor "${written}" is ${known.length === 0 ? 'not' : 'twice'} on the roster: left out.`,
        ];
  return {
    ...ruling,
    aircraft: same('aircraft'),
    instructor: known.length === 1 ? known[0]! : null,
    lessonNumber: same('lessonNumber'),
    objective: same('objective'),
    remarks,
  };
}

/** Each name once, in its first spelling. */
function different(names: readonly string[]): string[] {
  return names.filter((name, i) => names.findIndex((other) => isSameName(other, name)) === i);
}

function inWords(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} or ${names.at(-1)}`;
}
