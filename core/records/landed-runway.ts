import { geodesicFrom, type Position } from '../earth/geodesic.ts';
import { straightLine, leftOf, onLineAt } from '../numeric/straight-line.ts';
import { positionErrorOf } from '../track/position-error.ts';
import type { Track } from '../track/track.ts';
import { DEGREES_PER_RADIAN, METRES_PER_FOOT, wrap360 } from '../units/units.ts';
import type { RollLine } from './roll-line.ts';

/** What a roll shows of the runway under it. Half-widths hold 95 %. */
export interface LandedRunway {
  readonly touchdownS: number;
  /** Where the wheels touched, on the line of the roll. */
  readonly touchdown: Position;
  readonly threshold: Position;
  /** At the threshold. */
  readonly trueBearingDeg: number;
  readonly bearingHalfWidthDeg: number;
  /** To the side, at the touchdown. */
  readonly sideHalfWidthFt: number;
  /** From the touchdown to where it was slow or turned off. */
  readonly rollFt: number;
  /** Of the ground, above mean sea level; null where heights were no heights above the sea. */
  readonly elevation: {
    readonly touchdownFt: number;
    readonly thresholdFt: number;
    readonly halfWidthFt: number;
  } | null;
}

/** From a threshold to the touchdown (common practice: the aiming point's markings begin there, AIM 2-3-3; from memory). */
export const AIMING_FT = 1000;
/**
 * How far aside a roll leads from its one end to the other, and how far beside the centreline it runs (95 %, ours):
 * nobody touches down on the centreline, and then they steer back to it.
 */
const LEADS_ASIDE_FT = 30;
const BESIDE_FT = 35;
/** A slope known worse than this is not taken; the runway then counts as level, which half of 2 % in 1,000 ft may undo. */
const SLOPE_KNOWN = 0.005;
const SLOPE_UNKNOWN = 0.01;
/** How far from where it was assumed the threshold may be (95 %, ours): nobody knows how far an aircraft floated. */
export const FLOAT_FT = 1500;

/** Works out the runway of a roll. `antennaFt`: of the receiver's antenna above the ground. */
export function landedRunway(track: Track, line: RollLine, antennaFt: number): LandedRunway {
  const { fixes, bearingDeg, alongFt, rightFt } = line;
  const first = fixes[0]!;
  const at = { latDeg: track.latDeg[first]!, lonDeg: track.lonDeg[first]! };
  const onLine = geodesicFrom(at, wrap360(bearingDeg - 90), rightFt[0]! * METRES_PER_FOOT);
  const back = geodesicFrom(onLine, wrap360(bearingDeg + 180), AIMING_FT * METRES_PER_FOOT);
  const error = positionErrorOf(track, track.altitudeFt[first]!);
  const rollFt = alongFt.at(-1)!;
  const rollS = track.timeS[fixes.at(-1)!]! - track.timeS[first]!;
  // Half of the variance changes in flight, and the two ends of a roll differ by twice what each of them does.
  const drift = Math.sqrt(1 - Math.exp(-rollS / error.timeConstantS));
  const asideFt = Math.hypot(LEADS_ASIDE_FT, error.sideFt(first) * drift);
  const bearingHalfWidthDeg = Math.hypot(
    Math.atan(asideFt / rollFt) * DEGREES_PER_RADIAN,
    2 * line.bearingErrorDeg,
  );
  return {
    touchdownS: track.timeS[first]!,
    touchdown: onLine,
    threshold: back,
    trueBearingDeg: wrap360(back.endBearingDeg + 180),
    bearingHalfWidthDeg,
    sideHalfWidthFt: Math.hypot(BESIDE_FT, error.sideFt(first)),
    rollFt,
    elevation: isAboveSea(track) ? elevationOf(track, line, antennaFt, error.heightFt(first), drift) : null,
  };
}

/** A pressure altitude, and a transponder's, is no height above the sea. */
function isAboveSea({ altitudeSource }: Track): boolean {
  return altitudeSource !== 'pressure' && altitudeSource !== 'transponder';
}

function elevationOf(
  track: Track,
  { fixes, alongFt }: RollLine,
  antennaFt: number,
  heightFt: number,
  drift: number,
) {
  const heights = fixes.map((i) => track.altitudeFt[i]! - antennaFt);
  const line = straightLine(alongFt, heights);
  const left = leftOf(line, alongFt, heights).reduce((sum, ft) => sum + ft * ft, 0) / (heights.length - 2);
  const slopeHalf = Math.hypot((heightFt * drift) / alongFt.at(-1)!, 2 * Math.sqrt(left / line.spreadX));
  const isSloped = slopeHalf <= SLOPE_KNOWN;
  const ground = isSloped ? line : { ...line, slope: 0 };
  const awayFt = AIMING_FT + line.meanX;
  return {
    touchdownFt: onLineAt(ground, 0),
    thresholdFt: onLineAt(ground, -AIMING_FT),
    halfWidthFt: Math.hypot(
      heightFt,
      awayFt * (isSloped ? slopeHalf : SLOPE_UNKNOWN),
      FLOAT_FT * ground.slope,
    ),
  };
}
