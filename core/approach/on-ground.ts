import { median } from '../numeric/median.ts';
import { FEET_PER_NM } from '../units/units.ts';
import { firstBraking } from '../track/braking.ts';
import { FIT_HALF_WINDOW_S } from '../track/vertical-speed.ts';
import { medianAround } from './around.ts';
import { after } from './established.ts';
import { at, type Flown } from './flown.ts';
import { besideRunwayFt } from './position-error.ts';
import { byMargin, firstCrossing, firstHold, type Margin, type Stretch } from './hold.ts';

/** The threshold is crossed below this height above it; higher it is only passed abeam (design, section 7). */
export const THRESHOLD_CROSSING_BELOW_FT = 200;
const ROLLING_KT = 40;
const ROLLING_SHARE = 0.5;
const LEVEL_FPM = 150;
const LEVEL_S = 4;
const LEVEL_BELOW_FT = 60;
/** Heights of a roll that spread less than this tell the touchdown to a second or two. */
const FLAT_FT = 6;
const NEAR_MEDIAN_FT = 3;

export interface ThresholdPassage {
  readonly timeS: number;
  readonly heightFt: number;
}

export interface Landing {
  readonly touchdownS: number;
  readonly estimated: boolean;
  /** Fixes on the ground, first and last. */
  readonly roll: Stretch;
}

/** Where the distance to the threshold reaches 0; null when it never does. */
export function thresholdPassage(flown: Flown, stretch: Stretch): ThresholdPassage | null {
  const timeS = firstCrossing(flown.track, stretch, flown.deviations.distanceToThresholdNm, 0);
  return timeS === null ? null : { timeS, heightFt: heightAboveThresholdAt(flown, timeS) };
}

/** Height above the threshold at a moment; beside a height that is missing by those around, NaN where there are none. */
export function heightAboveThresholdAt(flown: Flown, momentS: number): number {
  const { heightAboveThresholdFt } = flown.deviations;
  const heightFt = at(flown, heightAboveThresholdFt, momentS);
  return Number.isNaN(heightFt) ? medianAround(flown, heightAboveThresholdFt, momentS) : heightFt;
}

/** Height above the runway's surface at a fix. */
export function heightAboveRunwayFt(flown: Flown, i: number): number {
  return flown.deviations.heightAboveThresholdFt[i]! - riseFt(flown, i);
}

/** Elevation of the runway's surface at a fix. */
export function runwayElevationFt(flown: Flown, i: number): number {
  return flown.facility.threshold.elevationFt + riseFt(flown, i);
}

/** How far the runway has risen from its threshold to a fix, feet, on the straight line between its two ends. */
function riseFt({ deviations, facility }: Flown, i: number): number {
  const alongFt = -deviations.distanceToThresholdNm[i]! * FEET_PER_NM;
  const rise = facility.farEnd.elevationFt - facility.threshold.elevationFt;
  const share = Math.min(1, Math.max(0, alongFt / facility.lengthFt));
  return rise * share;
}

function withinOutline(flown: Flown): Margin {
  const { deviations, facility } = flown;
  return (i) => {
    const alongFt = -deviations.distanceToThresholdNm[i]! * FEET_PER_NM;
    const asideFt = Math.abs(deviations.centrelineOffsetFt[i]!);
    return Math.min(
      alongFt,
      facility.lengthFt - alongFt,
      facility.widthFt / 2 + besideRunwayFt(flown, i) - asideFt,
    );
  };
}

/** The landing after the threshold; null when the aircraft never was on this runway. */
export function findLanding(flown: Flown, passage: ThresholdPassage, last: number): Landing | null {
  const beyond = after(flown, { first: 0, last }, passage.timeS);
  const roll = findRoll(flown, passage, beyond);
  if (!roll || landedAgainst(flown, roll)) return null;
  return { ...touchdown(flown, passage, roll), roll };
}

/** Whether the roll begins against the course: a landing the other way is no end of this approach. */
function landedAgainst({ courseAngleDeg }: Flown, { first }: Stretch): boolean {
  return Math.abs(courseAngleDeg.at(first)) > 90;
}

/** The fixes from the first on the ground to the last before leaving the outline or climbing away. */
function findRoll(flown: Flown, passage: ThresholdPassage, stretch: Stretch): Stretch | null {
  const { track } = flown;
  const outline = withinOutline(flown);
  const atThresholdKt = at(flown, track.groundspeedKt, passage.timeS);
  const slowKt = Math.max(ROLLING_KT, ROLLING_SHARE * atThresholdKt);
  const slow: Margin = (i) => slowKt - track.groundspeedKt[i]!;
  const level: Margin = (i) =>
    Math.min(
      LEVEL_FPM - Math.abs(track.verticalSpeedFpm[i]!),
      LEVEL_BELOW_FT - heightAboveRunwayFt(flown, i),
    );
  const near = nearGround(flown, stretch, slowKt);
  const slowS = firstHold(track, near, [slow, outline].map(byMargin), 0);
  const levelS = firstHold(track, near, [level, outline].map(byMargin), LEVEL_S);
  if (slowS === null && levelS === null) return null;
  const { first } = after(flown, stretch, Math.min(slowS ?? Infinity, levelS ?? Infinity));
  const isDown = (i: number) => Math.max(slow(i), level(i)) >= 0;
  const isLow = (i: number) =>
    outline(i) >= 0 && (isDown(i) || heightAboveRunwayFt(flown, i) < LEVEL_BELOW_FT);
  // A float is level enough to be taken for a roll: what it sinks through to the roll itself does not part them.
  let last = first;
  for (let i = first + 1; i <= stretch.last && isLow(i); i++) if (isDown(i)) last = i;
  return { first, last };
}

/** A stretch without what of its beginning and its end is beside the runway's length, or too fast and too high for it. */
function nearGround({ track, deviations, facility }: Flown, stretch: Stretch, slowKt: number): Stretch {
  const { groundspeedKt } = track;
  const { heightAboveThresholdFt, distanceToThresholdNm } = deviations;
  const lengthNm = facility.lengthFt / FEET_PER_NM;
  const rise = facility.farEnd.elevationFt - facility.threshold.elevationFt;
  // A foot more, and a thousandth of a mile, so that no rounding leaves out what is just near enough.
  const lowFt = LEVEL_BELOW_FT + Math.max(0, rise) + 1;
  const isNear = (i: number) =>
    Math.abs(distanceToThresholdNm[i]! + lengthNm / 2) <= lengthNm / 2 + 0.001 &&
    (groundspeedKt[i]! <= slowKt || heightAboveThresholdFt[i]! <= lowFt);
  let { first, last } = stretch;
  while (first <= last && !isNear(first)) first++;
  while (last > first && !isNear(last)) last--;
  // With the fixes around, since what begins and what ends does so between two.
  return { first: Math.max(stretch.first, first - 1), last: Math.min(stretch.last, last + 1) };
}

function touchdown(flown: Flown, passage: ThresholdPassage, roll: Stretch) {
  const heights = Array.from({ length: roll.last - roll.first + 1 }, (_, k) =>
    heightAboveRunwayFt(flown, roll.first + k),
  ).toSorted((a, b) => a - b);
  // Of their lower half: a float before the roll and a lift-off after it are level enough to be taken for it, but
  // nothing lies lower than the ground.
  const low = heights.slice(0, Math.ceil(heights.length / 2));
  if (low.at(-1)! - low[0]! < FLAT_FT)
    return { touchdownS: settledS(flown, passage, roll, median(low)), estimated: false };
  return { touchdownS: brakingS(flown, passage, roll) ?? flown.track.timeS[roll.first]!, estimated: true };
}

/** First moment after the threshold at which the height comes within 3 ft of the roll's. */
function settledS(flown: Flown, passage: ThresholdPassage, roll: Stretch, medianFt: number): number {
  const near: Margin = (i) => medianFt + NEAR_MEDIAN_FT - heightAboveRunwayFt(flown, i);
  const stretch = after(flown, { first: 0, last: roll.last }, passage.timeS);
  return firstHold(flown.track, stretch, [byMargin(near)], 0) ?? flown.track.timeS[roll.first]!;
}

/** Where the roll first brakes: it may slow down as much in the air, before. */
function brakingS(flown: Flown, passage: ThresholdPassage, roll: Stretch): number | null {
  const { track } = flown;
  // After a firm touchdown the fitted vertical speed is level only so much later.
  const fromS = Math.max(passage.timeS, track.timeS[roll.first]! - FIT_HALF_WINDOW_S);
  const { first } = after(flown, { first: 0, last: roll.last }, fromS);
  const braking = firstBraking(track, first, roll.last);
  return braking === null ? null : track.timeS[braking]!;
}
