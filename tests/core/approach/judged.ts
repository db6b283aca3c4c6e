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
import { METRES_PER_FOOT } from '../../../core/units/units.ts';
import { hairOfDigits, hairOfErrors, type Digits, type Hair } from '../../support/truth/hair.ts';
import { truthOf } from '../../support/truth/truth-of.ts';
import { viewOf } from '../../support/truth/viewed-flight.ts';
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

const FEET_PER_DECIMETRE = 0.1 / METRES_PER_FOOT;
const FEET_PER_CENTIMETRE = 0.01 / METRES_PER_FOOT;

/** The last digits of each way of writing; those without an altimeter are judged by their heights. */
const DIGITS: Readonly<Record<Habit, Digits>> = {
  english: { heightFt: 0.1, indicatedFt: 1 },
  units: { heightFt: 1, indicatedFt: 1 },
  german: { heightFt: FEET_PER_DECIMETRE, indicatedFt: FEET_PER_DECIMETRE },
  epoch: { heightFt: FEET_PER_CENTIMETRE, indicatedFt: NaN },
  elapsed: { heightFt: 1, indicatedFt: NaN },
  gpx: { heightFt: FEET_PER_CENTIMETRE, indicatedFt: NaN },
};

const HAIRS = new Map<string, Hair>();

/** What a log of so many fixes a second, so written, leaves to a hair; the same value each time. */
export function hairOf(habit: Habit, rateHz: number): Hair {
  const key = `${habit} ${rateHz}`;
  const hair = HAIRS.get(key) ?? hairOfDigits(DIGITS[habit], rateHz);
  HAIRS.set(key, hair);
  return hair;
}

/** Without errors, ten fixes a second or one: to a fraction of the interval. */
export const TEN_A_SECOND: Tolerances = {
  eventS: 0.2,
  interceptS: 0.2,
  wheelsS: 3,
  rms: 0.01,
  outsideS: 1,
  outsideShare: 0.05,
};
export const ONE_A_SECOND: Tolerances = { ...TEN_A_SECOND, eventS: 1, interceptS: 2 };
/** With the errors of a receiver and an altimeter. */
export const WITH_ERRORS: Tolerances = {
  eventS: 5,
  interceptS: 5,
  wheelsS: Infinity,
  rms: Infinity,
  outsideS: Infinity,
  outsideShare: 1,
};

/** One flight and its truths, by an altimeter or for a log without one, each worked out once. */
export interface JudgedFlight {
  readonly truth: FlightTruth;
  readonly by: (source: 'indicated' | 'height', hair: Hair) => readonly TrueApproach[];
}

export function judge(truth: FlightTruth): JudgedFlight {
  const view = viewOf(truth);
  const known = { indicated: new Map<Hair, TrueApproach[]>(), height: new Map<Hair, TrueApproach[]>() };
  return {
    truth,
    by: (source, hair) => {
      const approaches = known[source].get(hair) ?? truthOf(view, source, hair);
      known[source].set(hair, approaches);
      return approaches;
    },
  };
}

export interface Reading {
  readonly found: Found;
  /** What the program should have found, by the altitude that this log lets it decide by. */
  readonly expected: readonly TrueApproach[];
  readonly differences: readonly string[];
}

/** Writes the flight as a file, has the program read it, and tells every difference from the truth. */
export async function readAs(
  { truth, by }: JudgedFlight,
  habit: Habit,
  tolerances: Tolerances,
  recorder: Partial<Recorder> = {},
): Promise<Reading> {
  const settings = { ...EXACT, ...recorder };
  const fixes = recordFlight(truth, settings);
  const found = await foundIn(HABITS[habit](fixes), truth.plan.facility);
  const hair = recorder.gnss
    ? hairOfErrors(settings.gnss, settings.altimeter, settings.rateHz)
    : hairOf(habit, settings.rateHz);
  const expected = by(found.flown.altitudeSource === 'indicated' ? 'indicated' : 'height', hair);
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
