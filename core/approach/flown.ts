import type { Deviations } from '../deviation/deviations.ts';
import { needleError, type NeedleError } from '../deviation/needle-error.ts';
import type { FacilityGeometry } from '../facility/derive-geometry.ts';
import { LazyColumn } from '../numeric/lazy-column.ts';
import { LineMemory } from '../numeric/line-memory.ts';
import { valueAt } from '../numeric/polyline.ts';
import { NO_ERROR, type PositionError } from '../track/position-error.ts';
import type { Track } from '../track/track.ts';
import { courseAngles } from './course-angle.ts';

/** A track at a facility: everything that the search for approaches looks at, in columns of one length. */
export interface Flown {
  readonly track: Track;
  readonly deviations: Deviations;
  readonly facility: FacilityGeometry;
  /** Of the ground track to the course, right positive (`courseAngles`). */
  readonly courseAngleDeg: LazyColumn;
  /** What gates and decision altitude are judged by: indicated where it was logged, else the beam's height. */
  readonly decidingAltitudeFt: Float64Array;
  readonly altitudeSource: 'indicated' | 'geometric';
  /** The same with all of its error upward, and downward. */
  readonly decidingOffFt: DecidingOff;
  /** How far the fixes may be off, and what that does to the needles. */
  readonly error: PositionError;
  readonly needleError: NeedleError;
  /** Its columns over spans of time. */
  readonly lines: LineMemory;
  /** What was taken off every height that was logged, as a roll showed. */
  readonly heightCorrectionFt: number;
  /** Of the receiver's antenna above the ground, on wheels. */
  readonly antennaHeightFt: number;
}

type DecidingOff = Readonly<Record<'high' | 'low', LazyColumn>>;

/** Of a receiver's antenna above the ground where nobody says (design, section 10). */
export const USUAL_ANTENNA_FT = 6;

/** What is known of a flight besides its fixes. */
type Known = Partial<Pick<Flown, 'error' | 'heightCorrectionFt' | 'antennaHeightFt'>>;

/** Puts a flight together; its fixes are taken for what they say unless their error is given. */
export function flownAt(
  track: Track,
  deviations: Deviations,
  facility: FacilityGeometry,
  known: Known = {},
): Flown {
  const { error = NO_ERROR } = known;
  const indicatedFt = track.altitudeIndicatedFt;
  const decidingAltitudeFt = indicatedFt ?? track.altitudeFt;
  return {
    track,
    deviations,
    facility,
    courseAngleDeg: courseAngles(track, deviations),
    decidingAltitudeFt,
    decidingOffFt: decidingOff(decidingAltitudeFt, error),
    altitudeSource: indicatedFt ? 'indicated' : 'geometric',
    error,
    needleError: needleError(error, deviations, facility),
    lines: new LineMemory(track.timeS, track.gapLimitS),
    heightCorrectionFt: known.heightCorrectionFt ?? 0,
    antennaHeightFt: known.antennaHeightFt ?? USUAL_ANTENNA_FT,
  };
}

export function decidingOff(
  decidingAltitudeFt: Float64Array,
  { decidingFt }: Pick<PositionError, 'decidingFt'>,
): DecidingOff {
  const off = (side: 1 | -1) =>
    new LazyColumn(decidingAltitudeFt.length, (block, first) => {
      for (let k = 0; k < block.length; k++)
        block[k] = decidingAltitudeFt[first + k]! + side * decidingFt(first + k);
    });
  return { high: off(1), low: off(-1) };
}

/** A column's value at a moment; NaN where it was not recorded. */
export function at({ track }: Flown, values: Float64Array, momentS: number): number {
  return valueAt(track.timeS, values, momentS, track.gapLimitS);
}
