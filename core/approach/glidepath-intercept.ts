import { firstAfter, valueFrom } from '../numeric/polyline.ts';
import { FPM_PER_METRE_PER_SECOND, KNOTS_PER_METRE_PER_SECOND, RADIANS_PER_DEGREE } from '../units/units.ts';
import { at, type Flown } from './flown.ts';
import { inbound, within, withinLocalizer } from './established.ts';
import { firstHold, firstHoldWhere, type Condition, type Stretch } from './hold.ts';

/** The glidepath is held within half scale for 10 s, sinking as it asks (design, section 7). */
const HOLD_S = 10;
const HELD_FULL_SCALE = 0.5;
const LEAST_OF_NEEDED = 0.5;
const MOST_OF_NEEDED = 1.5;
/** How long before the intercept a height above the path makes it an intercept from above. */
const FROM_ABOVE_S = 60;
const FPM_PER_KNOT = FPM_PER_METRE_PER_SECOND / KNOTS_PER_METRE_PER_SECOND;

export interface GlidepathIntercept {
  readonly timeS: number;
  /** Null where too little before it was recorded to tell. */
  readonly from: 'above' | 'below' | null;
}

/** First moment on the scale of both needles, inbound. */
export function glidepathAliveS(flown: Flown, stretch: Stretch): number | null {
  return firstHold(flown.track, stretch, [...needles(flown, 1), ...inbound(flown)], 0);
}

function needles(flown: Flown, glidepathFullScale: number): readonly Condition[] {
  return [withinLocalizer(flown, 1), within(flown.deviations.glidepathFullScale, glidepathFullScale)];
}

/** Sink that the path asks for at a groundspeed, ft/min: positive is down. */
export function neededSinkFpm({ facility }: Flown, groundspeedKt: number): number {
  return groundspeedKt * FPM_PER_KNOT * Math.tan(facility.glidepathAngleDeg * RADIANS_PER_DEGREE);
}

/**
 * The first moment from which both needles hold for 10 s while the mean sink rate over those 10 s is 50 to 150 % of
 * what the mean groundspeed needs. Moments tried are the fixes, and the moment at which the needles come in.
 */
export function findGlidepathIntercept(
  flown: Flown,
  stretch: Stretch,
  establishedS: number | null,
): GlidepathIntercept | null {
  const held = [...needles(flown, HELD_FULL_SCALE), ...inbound(flown)];
  const timeS = firstHoldWhere(flown.track, stretch, held, HOLD_S, (holdS) => sinksAsNeeded(flown, holdS));
  return timeS === null ? null : { timeS, from: cameFrom(flown, timeS, establishedS) };
}

function sinksAsNeeded(flown: Flown, startS: number): boolean {
  const { altitudeFt, groundspeedKt } = flown.track;
  const lostFt = at(flown, altitudeFt, startS) - at(flown, altitudeFt, startS + HOLD_S);
  // Of one that climbs, no speed has to be asked for.
  if (!(lostFt >= 0)) return false;
  const sinkFpm = (lostFt / HOLD_S) * 60;
  const neededFpm = neededSinkFpm(flown, meanEverySecond(flown, groundspeedKt, startS));
  return sinkFpm >= LEAST_OF_NEEDED * neededFpm && sinkFpm <= MOST_OF_NEEDED * neededFpm;
}

/**
 * Mean of a column at a second's distance over a hold from a recorded moment on: a speed does not change enough to ask
 * for more. Walked through, since it is asked of many of a log's fixes.
 */
function meanEverySecond({ track }: Flown, values: Float64Array, startS: number): number {
  const { timeS, gapLimitS } = track;
  let sum = 0;
  let i = firstAfter(timeS, startS) - 1;
  for (let k = 0; k <= HOLD_S; k++) {
    const s = startS + k;
    while (i + 1 < timeS.length && timeS[i + 1]! <= s) i++;
    sum += valueFrom(timeS, values, i, s, gapLimitS);
  }
  return sum / (HOLD_S + 1);
}

function cameFrom(flown: Flown, interceptS: number, establishedS: number | null): GlidepathIntercept['from'] {
  const { timeS, gapLimitS } = flown.track;
  const { glidepathFullScale } = flown.deviations;
  const aboveAt = (value: number) => value > HELD_FULL_SCALE;
  // Settling on the localizer after the intercept says nothing of where it came from.
  const settledBefore = establishedS !== null && establishedS <= interceptS;
  if (settledBefore && aboveAt(at(flown, glidepathFullScale, establishedS))) return 'above';
  let wasBelow = false;
  let isCut = false;
  for (
    let i = firstAfter(timeS, interceptS - FROM_ABOVE_S);
    i < timeS.length && timeS[i]! <= interceptS;
    i++
  ) {
    if (aboveAt(glidepathFullScale[i]!)) return 'above';
    wasBelow ||= glidepathFullScale[i]! < -HELD_FULL_SCALE;
    isCut ||= i === 0 || timeS[i]! - timeS[i - 1]! > gapLimitS;
  }
  // A record that begins on the path does not tell how it came there.
  return isCut && !wasBelow ? null : 'below';
}
