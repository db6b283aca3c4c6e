import { WGS84_SEMI_MAJOR_AXIS_M } from '../earth/frame.ts';
import { firstAfter, firstAtOrAfter, type Polyline, type Span } from '../numeric/polyline.ts';
import { bendsOf } from '../numeric/straight-pieces.ts';
import { verticalSpeedAt } from '../track/vertical-speed.ts';
import { METRES_PER_NM, RADIANS_PER_DEGREE } from '../units/units.ts';
import { findExcursions, timeOutsideS } from './excursions.ts';
import type { Flown } from './flown.ts';
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
export interface DescentSecond {
  readonly timeS: number;
  /** The fit through the heights of ± 3 s. */
  readonly heldFpm: number;
  /** The sink that keeps the height above the path: by the part of the groundspeed that brings the path nearer. */
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
  /** Every second of each part that was recorded; nothing stands for a gap. */
  readonly runs: readonly (readonly DescentSecond[])[];
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
  const runs = new DescentSeconds(flown, span).runs();
  const parts = runs.map((run) => lineOf(run, ({ heldFpm, neededFpm }) => heldFpm - neededFpm));
  const spread = spreadOf(parts);
  if (!spread) return null;
  return {
    runs,
    meanExcessFpm: spread.mean,
    largestExcess: sustained(parts, 1),
    largestDeficit: sustained(parts, -1),
    steepS: timeOutsideS(findExcursions(parts, { lower: null, upper: STEEP_FPM }, 0)),
    ...accountOf(runs.map((run) => lineOf(run, ({ aboveGlidepathFt }) => aboveGlidepathFt))),
  };
}

/** A part of a span that was recorded: its seconds, and of each what it was once it was asked for, null where unknown. */
interface Recorded extends Polyline {
  readonly seconds: (DescentSecond | null | undefined)[];
}

/**
 * The seconds of a span, each worked out when it is first asked for: findings look at a few of them. One that stands
 * alone among seconds that are not known is not known either. None where the fixes or the heights are too coarse.
 */
export class DescentSeconds {
  readonly #flown: Flown;
  readonly #span: Span;
  #parts: readonly Recorded[] | null = null;

  constructor(flown: Flown, span: Span) {
    this.#flown = flown;
    this.#span = span;
  }

  /** Those from a moment to another, both included, in order. */
  within({ startS, endS }: Span): DescentSecond[] {
    const found: DescentSecond[] = [];
    for (const part of this.#recorded())
      for (let k = firstAtOrAfter(part.timeS, startS); k < part.timeS.length && part.timeS[k]! <= endS; k++) {
        const second = this.#at(part, k);
        if (second !== null && (this.#at(part, k - 1) ?? this.#at(part, k + 1)) !== null) found.push(second);
      }
    return found;
  }

  /** All, in the runs of two and more in which all of it is known. */
  runs(): DescentSecond[][] {
    const runs: DescentSecond[][] = [];
    for (const part of this.#recorded()) {
      let run: DescentSecond[] = [];
      runs.push(run);
      for (let k = 0; k < part.timeS.length; k++) {
        const second = this.#at(part, k);
        if (second !== null) run.push(second);
        else if (run.length > 0) runs.push((run = []));
      }
    }
    return runs.filter((run) => run.length > 1);
  }

  #recorded(): readonly Recorded[] {
    return (this.#parts ??= recordedParts(this.#flown, this.#span));
  }

  #at({ timeS, value, seconds }: Recorded, k: number): DescentSecond | null {
    if (k < 0 || k >= timeS.length) return null;
    const known = seconds[k];
    if (known !== undefined) return known;
    const second = secondAt(this.#flown, timeS[k]!, value[k]!);
    return (seconds[k] = Number.isNaN(second.heldFpm - second.neededFpm) ? null : second);
  }
}

function recordedParts({ track, deviations, lines }: Flown, span: Span): Recorded[] {
  if (track.medianIntervalS > SLOWEST_S || track.issues.some(({ code }) => code === 'altitude-coarse'))
    return [];
  return lines
    .over(deviations.heightAboveGlidepathFt, span)
    .map((part) => ({ ...resample(part, RESAMPLED_S), seconds: [] }));
}

/** One second, between two fixes: all its columns are read at one place. */
function secondAt(flown: Flown, s: number, aboveGlidepathFt: number): DescentSecond {
  const { track, deviations, courseAngleDeg, facility } = flown;
  const i = Math.min(firstAfter(track.timeS, s) - 1, track.count - 2);
  const share = (s - track.timeS[i]!) / (track.timeS[i + 1]! - track.timeS[i]!);
  const at = (column: Float64Array) => column[i]! + share * (column[i + 1]! - column[i]!);
  // A recorded vertical speed is not asked: see findDescent.
  const heldFpm = -verticalSpeedAt(track, s, i);
  const fromDeg = courseAngleDeg.at(i);
  const angleDeg = fromDeg + share * (courseAngleDeg.at(i + 1) - fromDeg);
  const closingKt = at(track.groundspeedKt) * Math.cos(angleDeg * RADIANS_PER_DEGREE);
  // A straight beam over a curved earth is steeper against the sea the farther out: by 3 % at 5 NM.
  const fallenAway = at(deviations.distanceToThresholdNm) / EARTH_RADIUS_NM;
  const steeper = 1 + fallenAway / Math.tan(facility.glidepathAngleDeg * RADIANS_PER_DEGREE);
  return { timeS: s, heldFpm, neededFpm: neededSinkFpm(flown, closingKt) * steeper, aboveGlidepathFt };
}

function lineOf(run: readonly DescentSecond[], of: (second: DescentSecond) => number): Polyline {
  const line = { timeS: new Float64Array(run.length), value: new Float64Array(run.length) };
  for (let i = 0; i < run.length; i++) {
    line.timeS[i] = run[i]!.timeS;
    line.value[i] = of(run[i]!);
  }
  return line;
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
