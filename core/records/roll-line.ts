import { earthCentred, eastNorthUp, localFrame } from '../earth/frame.ts';
import { median } from '../numeric/median.ts';
import { leftOf, straightLine, type StraightLine } from '../numeric/straight-line.ts';
import { firstBraking } from '../track/braking.ts';
import { FIX_FLAG, type Track } from '../track/track.ts';
import {
  DEGREES_PER_RADIAN,
  FEET_PER_METRE,
  METRES_PER_FOOT,
  RADIANS_PER_DEGREE,
  wrap180,
  wrap360,
} from '../units/units.ts';
import type { LandingRoll } from './landing-rolls.ts';

/** The straight part of a roll, on the ground, and the line through it. */
export interface RollLine {
  /** Its fixes, the first of them the touchdown; those that stand still, jump or have no height are left out. */
  readonly fixes: readonly number[];
  readonly bearingDeg: number;
  /** Of each fix, feet along the line from the first one, and right of the line. */
  readonly alongFt: readonly number[];
  readonly rightFt: readonly number[];
  /** Standard error of the bearing by how the fixes scatter, degrees. */
  readonly bearingErrorDeg: number;
}

/** Pointing farther aside, an aircraft is turning off (ours); a phone's track over 5 s is 1° off at 30 kt. */
const STRAIGHT_DEG = 5;
const LEAST_FIXES = 4;
/** As far above the ground's line a flare may still be taken for it (as `core/approach/on-ground.ts`). */
const NEAR_GROUND_FT = 3;
/** Heights that scatter more show no slope over half of a roll (ours). */
const SMOOTH_FT = 1;

/** Fits a line to the fixes of a roll from the touchdown to where it turns off; null where too few are left. */
export function rollLine(track: Track, roll: LandingRoll): RollLine | null {
  const straight = straightFixes(track, roll);
  if (straight.length < LEAST_FIXES) return null;
  const fixes = straight.slice(touchdown(track, straight));
  return fixes.length < LEAST_FIXES ? null : lineThrough(track, fixes);
}

function lineThrough(track: Track, fixes: readonly number[]): RollLine {
  const [east, north] = feetFrom(track, fixes);
  let bearingDeg = directionOf(track, fixes);
  // Turned into the line twice: then there is nothing left to turn.
  for (let round = 0; ; round++) {
    const { alongFt, rightFt } = turned(east!, north!, bearingDeg);
    const line = straightLine(alongFt, rightFt);
    const left = leftOf(line, alongFt, rightFt);
    const bearingErrorDeg = Math.atan(slopeError(line, left)) * DEGREES_PER_RADIAN;
    if (round === 2) return { fixes, bearingDeg, alongFt, rightFt: left, bearingErrorDeg };
    bearingDeg = wrap360(bearingDeg + Math.atan(line.slope) * DEGREES_PER_RADIAN);
  }
}

function slopeError({ spreadX }: StraightLine, left: readonly number[]): number {
  return Math.sqrt(left.reduce((sum, one) => sum + one * one, 0) / (left.length - 2) / spreadX);
}

function straightFixes(track: Track, { first, last }: LandingRoll): number[] {
  const all = Array.from({ length: last - first + 1 }, (_, k) => first + k);
  const isSure = (i: number) => (track.flags[i]! & (FIX_FLAG.frozen | FIX_FLAG.jumped)) === 0;
  const sure = all.filter((i) => isSure(i) && Number.isFinite(track.altitudeFt[i]!));
  if (sure.length === 0) return [];
  const alongDeg = directionOf(track, sure.slice(0, Math.ceil(sure.length / 2)));
  const isAside = (i: number) => !(Math.abs(wrap180(track.trackTrueDeg[i]! - alongDeg)) <= STRAIGHT_DEG);
  const off = sure.findIndex(isAside);
  return off === -1 ? sure : sure.slice(0, off);
}

/**
 * The first fix as near to the ground as two in a row are, since one may be off by chance. The second half of a roll
 * tells the ground and its slope: a flare and a float are level enough to be taken for it. Heights that scatter tell
 * nothing finer than the sink rate did: then it is where the roll first brakes, as in `core/approach/on-ground.ts`.
 */
function touchdown(track: Track, fixes: readonly number[]): number {
  const { alongFt } = lineThrough(track, fixes);
  const heightFt = fixes.map((i) => track.altitudeFt[i]!);
  const half = Math.floor(heightFt.length / 2);
  const [along, heights] = [alongFt.slice(half), heightFt.slice(half)];
  const ground = straightLine(along, heights);
  const squares = leftOf(ground, along, heights).reduce((sum, ft) => sum + ft * ft, 0);
  if (Math.sqrt(squares / heights.length) > SMOOTH_FT) return brakingAt(track, fixes);
  const above = leftOf(ground, alongFt, heightFt);
  const first = above.findIndex((ft, k) => ft <= NEAR_GROUND_FT && above[k + 1]! <= NEAR_GROUND_FT);
  return first === -1 ? half : first;
}

/** Place of the first of the fixes at or after the one that brakes; the first of all where none does. */
function brakingAt(track: Track, fixes: readonly number[]): number {
  const braking = firstBraking(track, fixes[0]!, fixes.at(-1)!);
  return braking === null ? 0 : fixes.findIndex((i) => i >= braking);
}

/** The middle direction of some fixes. */
function directionOf({ trackTrueDeg }: Track, fixes: readonly number[]): number {
  const about = trackTrueDeg[fixes[0]!]!;
  return wrap360(about + median(fixes.map((i) => wrap180(trackTrueDeg[i]! - about))));
}

function feetFrom({ latDeg, lonDeg, altitudeFt }: Track, fixes: readonly number[]): number[][] {
  const origin = fixes[0]!;
  const elevationFt = altitudeFt[origin]!;
  const frame = localFrame({ latDeg: latDeg[origin]!, lonDeg: lonDeg[origin]!, elevationFt });
  const [point, out] = [new Float64Array(3), new Float64Array(3)];
  const places = fixes.map((i) => {
    earthCentred(latDeg[i]!, lonDeg[i]!, elevationFt * METRES_PER_FOOT, point);
    eastNorthUp(frame, point, out);
    return [out[0]! * FEET_PER_METRE, out[1]! * FEET_PER_METRE] as const;
  });
  return [places.map(([east]) => east), places.map(([, north]) => north)];
}

function turned(east: readonly number[], north: readonly number[], bearingDeg: number) {
  const sin = Math.sin(bearingDeg * RADIANS_PER_DEGREE);
  const cos = Math.cos(bearingDeg * RADIANS_PER_DEGREE);
  return {
    alongFt: east.map((e, k) => e * sin + north[k]! * cos),
    rightFt: east.map((e, k) => e * cos - north[k]! * sin),
  };
}
