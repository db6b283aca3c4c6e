import type { Deviations } from '../deviation/deviations.ts';
import type { FacilityGeometry } from '../facility/derive-geometry.ts';
import type { Track } from '../track/track.ts';
import { wrap180 } from '../units/units.ts';

/** First and last fix of a stretch flown towards the runway. */
export interface InboundRun {
  readonly first: number;
  readonly last: number;
}

/** An aircraft flies inbound when its track is within this of the course (design, section 7). */
const INBOUND_DEG = 45;
/** Nothing farther from the antenna is looked at (design, section 7). */
const FARTHEST_NM = 25;
/** A run must have been on the localizer at least this far out, so that a taxi to the runway is none. Ours. */
const ON_LOCALIZER_BEYOND_NM = 1;

/**
 * Of all stretches flown inbound before the threshold that were on the localizer, the one that ends lowest; null
 * when there is none.
 */
export function findLowestRun(
  track: Track,
  deviations: Deviations,
  facility: FacilityGeometry,
): InboundRun | null {
  let lowest: InboundRun | null = null;
  for (const run of inboundRuns(track, deviations, facility)) {
    const endsLower = lowest === null || heightAtEnd(deviations, run) < heightAtEnd(deviations, lowest);
    if (endsLower && wasOnLocalizer(deviations, run)) lowest = run;
  }
  return lowest;
}

function inboundRuns(track: Track, deviations: Deviations, facility: FacilityGeometry): InboundRun[] {
  const runs: InboundRun[] = [];
  let first = -1;
  for (let i = 0; i <= track.count; i++) {
    const inbound =
      i < track.count &&
      deviations.distanceToThresholdNm[i]! > 0 &&
      deviations.distanceToAntennaNm[i]! <= FARTHEST_NM &&
      Math.abs(wrap180(track.trackTrueDeg[i]! - facility.courseTrueDeg)) <= INBOUND_DEG;
    if (inbound && first < 0) first = i;
    if (!inbound && first >= 0) {
      runs.push({ first, last: i - 1 });
      first = -1;
    }
  }
  return runs;
}

function heightAtEnd(deviations: Deviations, run: InboundRun): number {
  return deviations.heightAboveThresholdFt[run.last]!;
}

function wasOnLocalizer(deviations: Deviations, { first, last }: InboundRun): boolean {
  for (let i = first; i <= last; i++)
    if (
      Math.abs(deviations.localizerFullScale[i]!) <= 1 &&
      deviations.distanceToThresholdNm[i]! >= ON_LOCALIZER_BEYOND_NM
    )
      return true;
  return false;
}
