import type { InboundRun } from '../approach/lowest-run.ts';
import type { Deviations } from '../deviation/deviations.ts';
import type { FacilityGeometry } from '../facility/derive-geometry.ts';
import type { Span } from '../numeric/polyline.ts';
import type { Track } from '../track/track.ts';

/** Final of an inbound run: from the fix, or the run's start when it joined inside, to decision altitude. */
export interface FinalStretch extends Span {
  /** Null when the run joined inside the fix's distance. */
  readonly fixS: number | null;
  /** Null when decision altitude was not reached or is not known. */
  readonly decisionS: number | null;
}

/** Decides what is flown by: the indicated altitude where it was logged, else the height of the beam. */
export function decidingAltitude(track: Track): {
  source: 'indicated' | 'geometric';
  altitudeFt: Float64Array;
} {
  return track.altitudeIndicatedFt
    ? { source: 'indicated', altitudeFt: track.altitudeIndicatedFt }
    : { source: 'geometric', altitudeFt: track.altitudeFt };
}

/** The final part of a run; null when the run ended before the fix. */
export function finalStretch(
  track: Track,
  deviations: Deviations,
  facility: FacilityGeometry,
  run: InboundRun,
): FinalStretch | null {
  const { distanceNm } = facility.finalApproachFix;
  const distances = deviations.distanceToThresholdNm;
  const fixS = falls(track.timeS, distances, distanceNm, run.first, run.last);
  if (fixS === null && distances[run.first]! > distanceNm) return null;
  const startS = fixS ?? track.timeS[run.first]!;
  const decisionS =
    facility.decisionAltitudeFt === null
      ? null
      : falls(
          track.timeS,
          decidingAltitude(track).altitudeFt,
          facility.decisionAltitudeFt,
          run.first,
          run.last,
          startS,
        );
  return { startS, endS: decisionS ?? track.timeS[run.last]!, fixS, decisionS };
}

/** First moment after `afterS` at which a column falls to a level, between fixes `first` and `last`; null for never. */
function falls(
  timeS: Float64Array,
  values: Float64Array,
  level: number,
  first: number,
  last: number,
  afterS = -Infinity,
): number | null {
  for (let i = first + 1; i <= last; i++) {
    const above = values[i - 1]!;
    const below = values[i]!;
    if (!(above > level && below <= level)) continue;
    const crossingS = timeS[i - 1]! + ((above - level) / (above - below)) * (timeS[i]! - timeS[i - 1]!);
    if (crossingS >= afterS) return crossingS;
  }
  return null;
}
