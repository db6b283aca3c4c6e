import { csvText } from '../../support/files/csv.ts';
import {
  elapsedLayout,
  englishLayout,
  epochLayout,
  germanLayout,
  unitsRowLayout,
} from '../../support/files/csv-layouts.ts';
import { gpxText } from '../../support/files/gpx.ts';
import { EXACT, recordFlight, type LoggedFix, type Recorder } from '../../support/files/logged-fix.ts';
import type { FlightTruth } from '../../support/flight/flight-truth.ts';
import { ROUNDED, type Hair } from '../../support/truth/hair.ts';
import { truthOf } from '../../support/truth/truth-of.ts';
import type { TrueApproach } from '../../support/truth/true-approach.ts';
import { differences, type Tolerances } from './differences.ts';
import { foundIn, type Found } from './found-in.ts';

/** Ways of writing a file. `elapsed` has no date: its times are moved to where they were flown. */
const HABITS = {
  english: (fixes: readonly LoggedFix[]) => csvText(englishLayout(1), fixes),
  units: (fixes: readonly LoggedFix[]) => csvText(unitsRowLayout(['an invented flight'], -120), fixes),
  german: (fixes: readonly LoggedFix[]) => csvText(germanLayout(), fixes),
  epoch: (fixes: readonly LoggedFix[]) => csvText(epochLayout(), fixes),
  elapsed: (fixes: readonly LoggedFix[]) => csvText(elapsedLayout(0), fixes),
  gpx: (fixes: readonly LoggedFix[]) =>
    gpxText({ version: '1.1', trackName: 'flight', motion: true, timeDecimals: 1 }, fixes),
} as const;

export type Habit = keyof typeof HABITS;

/** Without errors, ten fixes a second or one: to a fraction of the interval. */
export const TEN_A_SECOND: Tolerances = {
  eventS: 0.2,
  roughEventS: 3,
  rms: 0.01,
  outsideS: 1,
  outsideShare: 0.05,
};
export const ONE_A_SECOND: Tolerances = { ...TEN_A_SECOND, eventS: 1 };
/** With the errors of a receiver and an altimeter. */
export const WITH_ERRORS: Tolerances = {
  eventS: 5,
  roughEventS: 5,
  rms: Infinity,
  outsideS: Infinity,
  outsideShare: 1,
};

/** One flight's truth, by an altimeter and for logs without one: worked out once, held against many files. */
export interface JudgedFlight {
  readonly truth: FlightTruth;
  readonly byIndicated: readonly TrueApproach[];
  readonly byHeight: readonly TrueApproach[];
}

export function judge(truth: FlightTruth, hair: Hair = ROUNDED): JudgedFlight {
  return { truth, byIndicated: truthOf(truth, 'indicated', hair), byHeight: truthOf(truth, 'height', hair) };
}

export interface Reading {
  readonly found: Found;
  /** What the program should have found, by the altitude that this log lets it decide by. */
  readonly expected: readonly TrueApproach[];
  readonly differences: readonly string[];
}

/** Writes the flight as a file, has the program read it, and tells every difference from the truth. */
export async function readAs(
  { truth, byIndicated, byHeight }: JudgedFlight,
  habit: Habit,
  tolerances: Tolerances,
  recorder: Partial<Recorder> = {},
): Promise<Reading> {
  const fixes = recordFlight(truth, { ...EXACT, ...recorder });
  const found = await foundIn(HABITS[habit](fixes), truth.plan.facility);
  const expected = found.flown.altitudeSource === 'indicated' ? byIndicated : byHeight;
  return { found, expected, differences: differences(found, expected, tolerances) };
}

/** Outcomes of the approaches, and kinds of what is listed beside them. */
export function planned(approaches: readonly Pick<TrueApproach, 'kind' | 'outcome'>[]): {
  outcomes: string[];
  ungraded: string[];
} {
  return {
    outcomes: approaches.filter(({ kind }) => kind === 'approach').map(({ outcome }) => outcome),
    ungraded: approaches.filter(({ kind }) => kind !== 'approach').map(({ kind }) => kind),
  };
}
