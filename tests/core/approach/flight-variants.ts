import { expect } from 'vitest';
import { defineFacility } from '../../../core/analyze.ts';
import { composeDebrief } from '../../../core/debrief/compose-debrief.ts';
import type { ApproachDebrief, Debrief, DebriefNeedle } from '../../../core/debrief/debrief.ts';
import { projectTrack } from '../../../core/deviation/project-track.ts';
import { buildTrack } from '../../../core/track/build-track.ts';
import { NO_ERROR } from '../../../core/track/position-error.ts';
import type { FacilityFile } from '../../support/flight/facility-file.ts';
import type { FlightTruth } from '../../support/flight/flight-truth.ts';
import { drawFlight } from '../../support/flight/drawn-flight.ts';
import { fly } from '../../support/flight/fly.ts';
import { PETRELHOLM } from '../../support/samples/petrelholm.ts';
import { COLD_MISSED, OFFSET_COURSE, OVERFLIGHT } from '../../support/samples/plans-elsewhere.ts';
import { CIRCLED } from '../../support/samples/plans-petrelholm.ts';
import { straightInLanding, touchAndGoThenLanding } from '../../support/scenarios/approaches.ts';
import { makeLog } from '../track/make-log.ts';

/** A flight as rows, so that a test can move, turn, thin or shift it; heights above sea level. */
export interface Rows {
  readonly facility: FacilityFile;
  readonly timeS: readonly number[];
  readonly latDeg: readonly number[];
  readonly lonDeg: readonly number[];
  readonly heightFt: readonly number[];
}

/** Every `tenths`th of a truth's ten rows a second. */
export function rowsOf({ plan, columns }: FlightTruth, tenths = 10): Rows {
  const pick = (column: Float64Array) => Array.from(column).filter((_, i) => i % tenths === 0);
  return {
    facility: plan.facility,
    timeS: pick(columns.timeS),
    latDeg: pick(columns.latDeg),
    lonDeg: pick(columns.lonDeg),
    heightFt: pick(columns.heightFt),
  };
}

/** The rows for which a test of their time holds. */
export function between(rows: Rows, keep: (timeS: number) => boolean): Rows {
  const kept = (column: readonly number[]) => column.filter((_, i) => keep(rows.timeS[i]!));
  return {
    facility: rows.facility,
    timeS: kept(rows.timeS),
    latDeg: kept(rows.latDeg),
    lonDeg: kept(rows.lonDeg),
    heightFt: kept(rows.heightFt),
  };
}

/** The debrief of rows by the whole way of the program after reading: track, projection, approaches, answer. */
export function debriefRows({ facility, heightFt, ...places }: Rows): Debrief {
  const log = makeLog({ ...mutable(places), values: { altitudeGeometricFt: [...heightFt] } });
  const defined = defineFacility(JSON.stringify(facility), 'made.json');
  const track = buildTrack(log, { undulationM: null, receiver: 'augmented' });
  if (!defined.ok || !track.ok) throw new Error('the flight is refused');
  return composeDebrief({
    log,
    track: track.value,
    ...defined.value,
    facilityIssues: [],
    deviations: projectTrack(track.value, defined.value.geometry),
    error: NO_ERROR,
  });
}

function mutable({ timeS, latDeg, lonDeg }: Pick<Rows, 'timeS' | 'latDeg' | 'lonDeg'>) {
  return { timeS: [...timeS], latDeg: [...latDeg], lonDeg: [...lonDeg] };
}

/** Needles drawn with excursions to each side, no two of them equally deep. */
const drawnExcursions = (): FlightTruth =>
  drawFlight({
    facility: PETRELHOLM,
    fromNm: 8,
    toNm: 0.3,
    groundspeedKt: 90,
    localizerFullScale: ({ timeS }) => (0.95 - timeS / 4000) * Math.sin(timeS / 25),
    glidepathFullScale: ({ timeS }) =>
      timeS < 60 ? -1 + timeS / 60 : (0.95 - timeS / 3000) * Math.sin((timeS - 60) / 30),
  });

/** One of each: flown by the generator, and one drawn. Each is flown once for all tests of a file. */
export const FLIGHTS: readonly { readonly name: string; readonly truth: () => FlightTruth }[] = [
  { name: 'a landing', truth: once(() => fly(straightInLanding(PETRELHOLM))) },
  { name: 'a missed approach', truth: once(() => fly(COLD_MISSED)) },
  { name: 'a circling', truth: once(() => fly(CIRCLED)) },
  { name: 'two approaches', truth: once(() => fly(touchAndGoThenLanding(PETRELHOLM))) },
  { name: 'an offset localizer', truth: once(() => fly(OFFSET_COURSE)) },
  { name: 'an overflight', truth: once(() => fly(OVERFLIGHT)) },
  { name: 'a drawn flight', truth: once(drawnExcursions) },
];

function once<T>(make: () => T): () => T {
  let made: T | null = null;
  return () => (made ??= make());
}

export interface Tolerance {
  /** Of numbers, by the path of their names and their size, which is 1 at least. */
  readonly number: (path: string, size: number) => number;
  readonly seconds: (path: string) => number;
}

const UTC = /^\d{4}-\d\d-\d\dT.*Z$/;

/** Where two answers differ by more than a tolerance, as paths with both values; empty when nowhere. */
export function differences(a: unknown, b: unknown, tolerance: Tolerance, path = ''): string[] {
  if (typeof a === 'number' && typeof b === 'number')
    return Math.abs(a - b) <= tolerance.number(path, Math.max(1, Math.abs(a)))
      ? []
      : [`${path}: ${a} | ${b}`];
  if (typeof a === 'string' && typeof b === 'string' && UTC.test(a) && UTC.test(b))
    return Math.abs(Date.parse(a) - Date.parse(b)) / 1000 <= tolerance.seconds(path)
      ? []
      : [`${path}: ${a} | ${b}`];
  if (a === null || b === null || typeof a !== 'object' || typeof b !== 'object')
    return a === b ? [] : [`${path}: ${String(a)} | ${String(b)}`];
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...keys].flatMap((key) =>
    differences(
      (a as Record<string, unknown>)[key],
      (b as Record<string, unknown>)[key],
      tolerance,
      `${path}.${key}`,
    ),
  );
}

/** What was found in a flight, without the places that its facility stands at. */
export function foundIn({ approaches, issues }: Debrief) {
  return { approaches, issues };
}

/** Of an approach: every moment, as kind and seconds since 1970. */
export function momentsOf({ events }: ApproachDebrief): [string, number][] {
  return events.map(({ kind, utc }) => [kind, Date.parse(utc) / 1000]);
}

/**
 * Two answers of one flight that was recorded more or less finely: the same kinds, outcomes and moments to a second,
 * and needles as near as that.
 */
export function expectAlike(fine: readonly ApproachDebrief[], coarse: readonly ApproachDebrief[]): void {
  const kinds = (approaches: readonly ApproachDebrief[]) =>
    approaches.map(({ kind, outcome, events }) => [kind, outcome, events.map((event) => event.kind)]);
  expect(kinds(coarse)).toEqual(kinds(fine));
  for (const [k, approach] of fine.entries()) {
    const other = coarse[k]!;
    for (const [i, [kind, timeS]] of momentsOf(approach).entries())
      expect([kind, Math.abs(momentsOf(other)[i]![1] - timeS) <= 1]).toEqual([kind, true]);
    for (const [i, segment] of approach.segments.entries())
      for (const axis of ['localizer', 'glidepath'] as const)
        expectNeedleAlike(segment[axis], other.segments[i]![axis]);
  }
}

function expectNeedleAlike(a: DebriefNeedle | null, b: DebriefNeedle | null): void {
  if (!a || !b) return;
  expect(Math.abs(a.rmsFullScale! - b.rmsFullScale!)).toBeLessThan(0.01);
  const [aS, bS] = [a.timeOutsideS?.best ?? 0, b.timeOutsideS?.best ?? 0];
  expect(Math.abs(aS - bS)).toBeLessThanOrEqual(Math.max(1, 0.05 * aS));
}
