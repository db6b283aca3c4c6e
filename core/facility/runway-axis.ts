import { geodesicBetween, geodesicFrom, type Position } from '../earth/geodesic.ts';
import { FEET_PER_METRE, METRES_PER_FOOT, RADIANS_PER_DEGREE } from '../units/units.ts';
import type { Facility } from './facility-schema.ts';

/** The line that everything else is measured along: from the landing threshold to the far end. */
export interface RunwayAxis {
  readonly threshold: Position;
  readonly farEnd: Position;
  /** At the threshold, looking at the far end. */
  readonly trueBearingDeg: number;
  readonly lengthFt: number;
}

/**
 * The axis from the two ends where both are given (positions are published finer than bearings), else from
 * bearing and length. Null when the file gives neither.
 */
export function runwayAxis(runway: Facility['runway']): RunwayAxis | null {
  const { threshold, farEnd, trueBearingDeg, lengthFt } = runway;
  if (farEnd !== undefined) {
    const line = geodesicBetween(threshold, farEnd);
    const measuredFt = line.distanceM * FEET_PER_METRE;
    return { threshold, farEnd, trueBearingDeg: line.startBearingDeg, lengthFt: measuredFt };
  }
  if (trueBearingDeg === undefined || lengthFt === undefined) return null;
  const end = geodesicFrom(threshold, trueBearingDeg, lengthFt * METRES_PER_FOOT);
  return { threshold, farEnd: end, trueBearingDeg: trueBearingDeg % 360, lengthFt };
}

/** Where a point lies as seen from the threshold: feet down the runway, and feet to its right. */
export function placeOnAxis(
  axis: Pick<RunwayAxis, 'threshold' | 'trueBearingDeg'>,
  point: Position,
): { alongFt: number; rightFt: number } {
  const line = geodesicBetween(axis.threshold, point);
  const distanceFt = line.distanceM * FEET_PER_METRE;
  const aside = (line.startBearingDeg - axis.trueBearingDeg) * RADIANS_PER_DEGREE;
  return { alongFt: distanceFt * Math.cos(aside), rightFt: distanceFt * Math.sin(aside) };
}
