import { WGS84_SEMI_MAJOR_AXIS_M } from '../earth/frame.ts';
import { clip, firstAfter, firstAtOrAfter, valueAt, type Polyline, type Span } from '../numeric/polyline.ts';
import { bendsOf } from '../numeric/straight-pieces.ts';
import { gapsLongerThan } from '../track/gaps.ts';
import { FIT_HALF_WINDOW_S, verticalSpeedFromHeights } from '../track/vertical-speed.ts';
import { METRES_PER_NM, RADIANS_PER_DEGREE } from '../units/units.ts';
import { findExcursions, timeOutsideS } from './excursions.ts';
import { at, type Flown } from './flown.ts';
import { neededSinkFpm } from './glidepath-intercept.ts';
import { spreadOf } from './spread.ts';
import { resample } from './swings.ts';

/** Sinking so much faster than needed is steep. Ours, as is the same margin in the limit of a gate's sink rate. */
const STEEP_FPM = 300;
/** How long a difference lasts that is told (ours). */
const SUSTAINED_S = 5;
/** Less height than this is no stretch of its own, and half of it no bend (ours). */
const LEAST_FT = 20;
const STRAIGHT_WITHIN_FT = LEAST_FT / 2;
/** Two neighbours are one stretch unless one of them is slower than this share of the other: then it paused (ours). */
const PAUSED_SHARE = 1 / 3;
/** A sustained difference smaller than this is none: rounding, or the fit's (ours). */
const LEAST_FPM = 1;
const RESAMPLED_S = 1;
/** With fixes farther apart a fit over ± 3 s has too few heights. */
const SLOWEST_S = 3;
const EARTH_RADIUS_NM = WGS84_SEMI_MAJOR_AXIS_M / METRES_PER_NM;

/** One second of the descent. Sink rates are positive down. */
interface DescentSecond {
  readonly timeS: number;
  /** The fit through the heights of ± 3 s. */
  readonly heldFpm: number;
  /** To stay as high above the glidepath as it is, at the speed at which it comes nearer. */
  readonly neededFpm: number;
  readonly aboveGlidepathFt: number;
}

/** A difference that was not undercut for 5 s, and when these began. */
export interface Sustained {
  readonly fpm: number;
  readonly fromS: number;
}

/** A stretch in which height above the glidepath was lost or gained; below the path is negative. */
interface DescentStretch extends Span {
  readonly fromFt: number;
  readonly toFt: number;
  /** Positive when gained: it sank slower than the path. */
  readonly gainedFt: number;
  /** Held less needed, on average: positive when it sank faster than the path. */
  readonly meanExcessFpm: number;
}

/** The descent held against the one that the glidepath needed, and where the excess went. */
export interface Descent {
  /** Every second of the parts that were recorded; nothing stands for a gap. */
  readonly seconds: readonly DescentSecond[];
  /** Held less needed. */
  readonly meanExcessFpm: number;
  /** The most that it sank faster than needed, and slower; null where it never did for 5 s. */
  readonly largestExcess: Sustained | null;
  readonly largestDeficit: Sustained | null;
  /** Seconds sinking more than 300 ft/min faster than needed. */
  readonly steepS: number;
  readonly stretches: readonly DescentStretch[];
  /** Of height above the glidepath, from the first second to the last. */
  readonly changeFt: number;
  /** What of it went in smaller movements and across gaps: with the feet of all stretches it makes the change. */
  readonly restFt: number;
}

/**
 * The descent of a span, second by second (design, sections 8 and 10). Null where nothing of it is known: no heights
 * or no groundspeed, fixes more than 3 s apart, or heights in steps of 25 ft or more, which move faster than any
 * aircraft. A recorded vertical speed is not asked: it is an instrument's, with its own lag.
 */
export function findDescent(flown: Flown, span: Span): Descent | null {
  const { track } = flown;
  if (track.medianIntervalS > SLOWEST_S || track.issues.some(({ code }) => code === 'altitude-coarse'))
    return null;
  const rates = ratesOver(flown, span);
  const parts = clip(rates.timeS, rates.excessFpm, span, track.gapLimitS)
    .map((part) => resample(part, RESAMPLED_S))
    .filter(({ timeS }) => timeS.length > 1);
  const spread = spreadOf(parts);
  if (!spread) return null;
  const heights = parts.map(({ timeS }) => ({
    timeS,
    value: timeS.map((s) => at(flown, flown.deviations.heightAboveGlidepathFt, s)),
  }));
  const needed = (s: number) => valueAt(rates.timeS, rates.neededFpm, s, track.gapLimitS);
  return {
    seconds: parts.flatMap((part, i) => secondsOf(part, heights[i]!.value, needed)),
    meanExcessFpm: spread.mean,
    largestExcess: sustained(parts, 1),
    largestDeficit: sustained(parts, -1),
    steepS: timeOutsideS(findExcursions(parts, { lower: null, upper: STEEP_FPM }, 0)),
    ...accountOf(heights),
  };
}

interface Rates {
  readonly timeS: Float64Array;
  readonly neededFpm: Float64Array;
  /** Held less needed; NaN where the height above the path is not known. */
  readonly excessFpm: Float64Array;
}

/** Both rates at the fixes of a span, and at those around it that its ends and their fits look at. */
function ratesOver({ track, deviations, courseAngleDeg, facility }: Flown, span: Span): Rates {
  const before = track.timeS[Math.max(0, firstAfter(track.timeS, span.startS) - 1)]!;
  const after = track.timeS[Math.min(firstAtOrAfter(track.timeS, span.endS), track.count - 1)]!;
  const first = firstAtOrAfter(track.timeS, before - FIT_HALF_WINDOW_S);
  const last = firstAfter(track.timeS, after + FIT_HALF_WINDOW_S);
  const timeS = track.timeS.subarray(first, last);
  const heightFt = track.altitudeFt.subarray(first, last);
  const climbFpm = verticalSpeedFromHeights(timeS, heightFt, gapsLongerThan(timeS, track.gapLimitS));
  const tanAngle = Math.tan(facility.glidepathAngleDeg * RADIANS_PER_DEGREE);
  const neededFpm = timeS.map((_, k) => {
    const i = first + k;
    const closingKt = track.groundspeedKt[i]! * Math.cos(courseAngleDeg[i]! * RADIANS_PER_DEGREE);
    // A straight beam over a curved earth is steeper against the sea the farther out: by 3 % at 5 NM.
    const steeper = 1 + deviations.distanceToThresholdNm[i]! / EARTH_RADIUS_NM / tanAngle;
    return neededSinkFpm({ facility }, closingKt) * steeper;
  });
  const excessFpm = neededFpm.map((fpm, k) =>
    // A fit looks over a height that is missing.
    Number.isNaN(deviations.heightAboveGlidepathFt[first + k]!) ? NaN : -climbFpm[k]! - fpm,
  );
  return { timeS, neededFpm, excessFpm };
}

function secondsOf(
  { timeS, value }: Polyline,
  aboveFt: Float64Array,
  needed: (s: number) => number,
): DescentSecond[] {
  return Array.from(timeS, (s, i) => {
    const neededFpm = needed(s);
    return { timeS: s, heldFpm: neededFpm + value[i]!, neededFpm, aboveGlidepathFt: aboveFt[i]! };
  });
}

/** The largest difference to one side that no second of 5 s undercuts; null where there is none. */
function sustained(parts: readonly Polyline[], side: 1 | -1): Sustained | null {
  let most: Sustained | null = null;
  for (const { timeS, value } of parts)
    for (let i = 0; i + SUSTAINED_S < value.length; i++) {
      let fpm = Infinity;
      for (let k = i; k <= i + SUSTAINED_S; k++) fpm = Math.min(fpm, side * value[k]!);
      if (fpm >= LEAST_FPM && fpm > (most?.fpm ?? 0)) most = { fpm, fromS: timeS[i]! };
    }
  return most;
}

/** The stretches of all parts, and what is left of the change between their two ends. */
function accountOf(parts: readonly Polyline[]): Pick<Descent, 'stretches' | 'changeFt' | 'restFt'> {
  const stretches: DescentStretch[] = [];
  let restFt = 0;
  let beforeFt = parts[0]!.value[0]!;
  for (const part of parts) {
    restFt += part.value[0]! - beforeFt;
    beforeFt = part.value.at(-1)!;
    for (const piece of joined(piecesOf(part)))
      if (Math.abs(piece.gainedFt) >= LEAST_FT && piece.endS - piece.startS >= SUSTAINED_S)
        stretches.push(piece);
      else restFt += piece.gainedFt;
  }
  return { stretches, restFt, changeFt: beforeFt - parts[0]!.value[0]! };
}

function piecesOf(part: Polyline): DescentStretch[] {
  const bends = bendsOf(part, STRAIGHT_WITHIN_FT);
  const end = (i: number) => ({ s: part.timeS[i]!, ft: part.value[i]! });
  return bends.slice(1).map((to, k) => stretch(end(bends[k]!), end(to)));
}

/** Neighbours that lose, or gain, at about one rate are one stretch. */
function joined(pieces: readonly DescentStretch[]): DescentStretch[] {
  const found: DescentStretch[] = [];
  for (const piece of pieces) {
    const before = found.at(-1);
    if (before === undefined || !goesOn(before.meanExcessFpm, piece.meanExcessFpm)) found.push(piece);
    else
      found[found.length - 1] = stretch(
        { s: before.startS, ft: before.fromFt },
        { s: piece.endS, ft: piece.toFt },
      );
  }
  return found;
}

function goesOn(beforeFpm: number, nextFpm: number): boolean {
  const [slower, faster] = [Math.abs(beforeFpm), Math.abs(nextFpm)].sort((a, b) => a - b);
  return beforeFpm * nextFpm > 0 && slower! >= PAUSED_SHARE * faster!;
}

interface End {
  readonly s: number;
  readonly ft: number;
}

function stretch(from: End, to: End): DescentStretch {
  const gainedFt = to.ft - from.ft;
  return {
    startS: from.s,
    endS: to.s,
    fromFt: from.ft,
    toFt: to.ft,
    gainedFt,
    meanExcessFpm: (-60 * gainedFt) / (to.s - from.s),
  };
}
