import { refused, usable, type Outcome } from '../../core/issue/issue.ts';
import {
  NOTHING_STATED,
  type Allowance,
  type Conditions,
  type RunwaySeen,
  type Stated,
} from '../../core/standard/stated.ts';
import type { StatedWind } from '../../core/approach/estimated-airspeed.ts';
import type { Span } from '../../core/numeric/polyline.ts';
import type { Arguments, Option } from './command.ts';
import { numberOf } from './number-of.ts';

const YES_NO = ['yes', 'no'] as const;
/** Speeds of aircraft that fly an ILS, and altitudes that one is assigned. */
export const SPEED_KT = { min: 30, max: 400 };
export const ALTITUDE_FT = { min: -1500, max: 30_000 };
/** Nobody flies an ILS in more. Ours. */
const STRONGEST_WIND_KT = 100;

/** What the people on board may state, for every approach of the command. */
export const STATED_OPTIONS: Readonly<Record<string, Option>> = {
  'target-airspeed': { value: 'the indicated airspeed meant on final, in knots' },
  'intercept-airspeed': { value: 'the indicated airspeed meant before final, in knots' },
  vref: { value: 'Vref, in knots' },
  'assigned-altitude': { value: 'the altitude assigned before final, in feet' },
  wind: {
    value: 'the wind on final as 250/18, degrees true and knots: without a logged airspeed one is estimated',
  },
  conditions: { value: 'imc, simulated or vmc', oneOf: ['imc', 'simulated', 'vmc'] },
  runway: {
    value: 'whether the runway was in sight at minimums, seen or not-seen',
    oneOf: ['seen', 'not-seen'],
  },
  'vectored-inside-fix': { value: 'yes, when a controller turned it on inside the fix', oneOf: YES_NO },
  'engine-out': { value: 'yes, when flown asymmetric', oneOf: YES_NO },
  hood: { value: 'yes or no', oneOf: YES_NO },
  flown: { value: 'hand-flown or coupled', oneOf: ['hand-flown', 'coupled'] },
  turbulence: { value: 'how it was, in a word or two' },
  'instructor-flew': {
    value: 'from and to, each with its date, in UTC, as 2026-05-01T09:10:00Z/2026-05-01T09:10:30Z',
    repeatable: true,
  },
  allow: { value: 'more room on a criterion, as "airspeed-final=5: gusts"', repeatable: true },
};

/** The statements that these options make; nothing that was not said is taken for said. */
export function statedOf({ options }: Arguments): Outcome<Stated> {
  const text = (name: string) => options[name]?.[0];
  const numbers: Record<string, number | null> = {};
  for (const [name, range] of NUMBERS) {
    const number = numberOf(name, text(name), range);
    if (!number.ok) return number;
    numbers[name] = number.value;
  }
  const wind = windOf(text('wind'));
  if (!wind.ok) return wind;
  const spans = allOf(options['instructor-flew'] ?? [], spanOf);
  if (!spans.ok) return spans;
  const allowances = allOf(options['allow'] ?? [], allowanceOf);
  if (!allowances.ok) return allowances;
  const yes = (name: string) => text(name) === 'yes';
  return usable({
    ...NOTHING_STATED,
    conditions: (text('conditions') as Conditions | undefined) ?? 'not-stated',
    visualReferenceAtMinimums: (text('runway') as RunwaySeen | undefined) ?? 'not-stated',
    targetAirspeedKt: numbers['target-airspeed']!,
    interceptAirspeedKt: numbers['intercept-airspeed']!,
    vrefKt: numbers['vref']!,
    assignedAltitudeFt: numbers['assigned-altitude']!,
    wind: wind.value,
    hood: text('hood') === undefined ? null : yes('hood'),
    flown: (text('flown') as 'hand-flown' | 'coupled' | undefined) ?? null,
    vectoredInsideFix: yes('vectored-inside-fix'),
    engineOut: yes('engine-out'),
    turbulence: text('turbulence') ?? null,
    instructorFlew: spans.value,
    allowances: allowances.value,
  });
}

const NUMBERS = [
  ['target-airspeed', SPEED_KT],
  ['intercept-airspeed', SPEED_KT],
  ['vref', SPEED_KT],
  ['assigned-altitude', ALTITUDE_FT],
] as const;

function allOf<T>(texts: readonly string[], read: (text: string) => Outcome<T>): Outcome<T[]> {
  const values: T[] = [];
  for (const text of texts) {
    const value = read(text);
    if (!value.ok) return value;
    values.push(value.value);
  }
  return usable(values);
}

/** As in a weather report: true, not the tower's magnetic. 360 and 0 are both north. */
export function windOf(text: string | undefined): Outcome<StatedWind | null> {
  if (text === undefined) return usable(null);
  const [, from, speed] = /^(\d{1,3}(?:\.\d+)?)\/(\d{1,3}(?:\.\d+)?)$/.exec(text) ?? [];
  const wind = { fromTrueDeg: Number(from), speedKt: Number(speed) };
  if (wind.fromTrueDeg <= 360 && wind.speedKt <= STRONGEST_WIND_KT) return usable(wind);
  return refused('arguments', `--wind "${text}" is no wind.`, {
    tip: `Write it as 250/18: from 0 to 360 degrees true, and at most ${STRONGEST_WIND_KT} knots.`,
  });
}

function spanOf(text: string): Outcome<Span> {
  const [startS, endS] = text.split('/').map((moment) => Date.parse(moment) / 1000);
  if (startS !== undefined && endS !== undefined && startS < endS) return usable({ startS, endS });
  return refused('arguments', `--instructor-flew "${text}" is no span of time.`, {
    tip: 'Write from and to with their date, in UTC, as 2026-05-01T09:10:00Z/2026-05-01T09:10:30Z.',
  });
}

function allowanceOf(text: string): Outcome<Allowance> {
  const [, criterion, by, reason] = /^([a-z-]+)=(\d+(?:\.\d+)?):\s*(\S.*)$/.exec(text) ?? [];
  if (criterion && by && reason && Number(by) > 0) return usable({ criterion, by: Number(by), reason });
  return refused('arguments', `--allow "${text}" names no criterion, room and reason.`, {
    tip: 'Write it as "airspeed-final=5: gusts".',
  });
}
