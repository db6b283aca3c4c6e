import type { Deviations } from '../deviation/deviations.ts';
import { LazyColumn } from '../numeric/lazy-column.ts';
import { changeOver, forEachWindow, stretches } from '../track/window.ts';
import type { Track } from '../track/track.ts';
import { DEGREES_PER_RADIAN } from '../units/units.ts';

/** Nothing farther from the antenna is looked at (design, section 7). */
const FARTHEST_NM = 25;
/** Movement under this over 5 s has no direction: half a knot. */
const STANDING_NM = (0.5 * 5) / 3600;

/**
 * The angle of each fix's ground track to the course, in degrees, right positive: 0 flies inbound along the course,
 * ± 180 outbound. Taken from positions over 5 s in the localizer antenna's own frame, never from a course column.
 * NaN farther than 25 NM from the antenna, and while standing.
 */
export function courseAngles(track: Track, { alongCourseNm, acrossCourseNm }: Deviations): LazyColumn {
  const parts = stretches(track.count, track.gaps);
  return new LazyColumn(track.count, (angleDeg, first) => {
    angleDeg.fill(NaN);
    const asked = { first, last: first + angleDeg.length - 1 };
    forEachWindow(track.timeS, parts, asked, (window) => {
      const i = window.centre;
      if (alongCourseNm[i]! ** 2 + acrossCourseNm[i]! ** 2 > FARTHEST_NM ** 2) return;
      const inwardNm = -changeOver(alongCourseNm, window);
      const rightNm = changeOver(acrossCourseNm, window);
      if (Math.abs(inwardNm) + Math.abs(rightNm) >= STANDING_NM)
        angleDeg[i - first] = Math.atan2(rightNm, inwardNm) * DEGREES_PER_RADIAN;
    });
  });
}
