import type { Deviations } from '../deviation/deviations.ts';
import { changeOver, forEachWindow } from '../track/window.ts';
import type { Track } from '../track/track.ts';
import { DEGREES_PER_RADIAN, RADIANS_PER_DEGREE } from '../units/units.ts';

/** Nothing farther from the antenna is looked at (design, section 7). */
const FARTHEST_NM = 25;
/** Movement under this over 5 s has no direction: half a knot. */
const STANDING_NM = (0.5 * 5) / 3600;

/**
 * The angle of each fix's ground track to the course, in degrees, right positive: 0 flies inbound along the course,
 * ± 180 outbound. Taken from positions over 5 s in the localizer antenna's own frame, never from a course column.
 * NaN farther than 25 NM from the antenna, and while standing.
 */
export function courseAngles(track: Track, deviations: Deviations): Float64Array {
  const { localizerDeg, distanceToAntennaNm } = deviations;
  const alongNm = new Float64Array(track.count);
  const acrossNm = new Float64Array(track.count);
  for (let i = 0; i < track.count; i++) {
    const distanceNm = distanceToAntennaNm[i]! > FARTHEST_NM ? NaN : distanceToAntennaNm[i]!;
    const angle = localizerDeg[i]! * RADIANS_PER_DEGREE;
    alongNm[i] = distanceNm * Math.cos(angle);
    acrossNm[i] = distanceNm * Math.sin(angle);
  }
  const angleDeg = new Float64Array(track.count).fill(NaN);
  forEachWindow(track.timeS, track.gaps, (window) => {
    const inwardNm = -changeOver(alongNm, window);
    const rightNm = changeOver(acrossNm, window);
    if (Math.abs(inwardNm) + Math.abs(rightNm) >= STANDING_NM)
      angleDeg[window.centre] = Math.atan2(rightNm, inwardNm) * DEGREES_PER_RADIAN;
  });
  return angleDeg;
}
