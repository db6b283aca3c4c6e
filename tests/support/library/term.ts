import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { csvText } from '../files/csv.ts';
import { englishLayout } from '../files/csv-layouts.ts';
import { recordFlight, type LoggedFix } from '../files/logged-fix.ts';
import { PANEL } from '../flight/altimeter-error.ts';
import { fly } from '../flight/fly.ts';
import type { FlightTruth } from '../flight/flight-truth.ts';
import { AUGMENTED } from '../flight/gnss-error.ts';
import { randomPlan } from '../scenarios/random-plan.ts';

/** A school's term: invented people, and how often each of them flies. */
export const STUDENTS = [
  'Rowan Teal',
  'Hazel Wren',
  'Linden Siskin',
  'Willow Dunlin',
  'Aspen Plover',
  'Maple Godwit',
  'Alder Pipit',
  'Briar Knot',
  'Clover Avocet',
  'Fern Ruff',
  'Sorrel Smew',
  'Thyme Curlew',
] as const;
export const LESSONS = 8;

const DAY_S = 86_400;
/** Each flight is flown once; every student flies it on a day of their own, and with a receiver of their own. */
const FIRST_DAY_S = Date.UTC(2026, 2, 2) / 1000;

/**
 * Writes a term as a folder for each student, and in it a folder for each day with the log of that lesson. Gives how
 * many logs there are.
 */
export function writeTerm(folder: string, students: readonly string[] = STUDENTS, lessons = LESSONS): number {
  for (let lesson = 0; lesson < lessons; lesson++) {
    const truth = fly(randomPlan(lesson + 1));
    for (const [i, student] of students.entries()) {
      writeLesson(join(folder, student), lesson, i % 5, truth, student);
    }
  }
  return students.length * lessons;
}

/** Puts the log of a lesson, counted from 0, into a folder for its day: so many days into its week. */
export function writeLesson(
  folder: string,
  lesson: number,
  weekday: number,
  truth: FlightTruth,
  seed: string,
): void {
  const day = lesson * 7 + weekday;
  const recorder = { rateHz: 1, gnss: AUGMENTED, altimeter: PANEL, seed };
  const fixes = recordFlight(truth, recorder).map((fix) => onDay(fix, day));
  const date = new Date((FIRST_DAY_S + day * DAY_S) * 1000).toISOString().slice(0, 10);
  const place = join(folder, date);
  mkdirSync(place, { recursive: true });
  writeFileSync(join(place, `flight-${lesson + 1}.csv`), csvText(englishLayout(), fixes));
}

function onDay(fix: LoggedFix, day: number): LoggedFix {
  return { ...fix, timeS: FIRST_DAY_S + day * DAY_S + (fix.timeS % DAY_S) };
}
