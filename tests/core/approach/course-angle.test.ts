import { describe, expect, it } from 'vitest';
import { courseAngles } from '../../../core/approach/course-angle.ts';
import { makeFlown } from './make-flown.ts';

/**
 * Four fixes a second for a quarter of an hour on a wandering course, with gaps of 6 s and more: two right after one
 * another, so that a fix stands alone between them.
 */
const GAPS: readonly (readonly [from: number, to: number])[] = [
  [100, 108],
  [108.1, 115],
  [255.9, 300],
  [700, 760],
];
const timeS = Array.from({ length: 3600 }, (_, i) => i / 4).filter(
  (s) => !GAPS.some(([from, to]) => s > from && s < to),
);
const { track, deviations } = makeFlown({
  timeS,
  distanceNm: (s) => 27 - s / 30 + 0.05 * Math.sin(s / 9),
  localizer: (s) => 0.8 * Math.sin(s / 40),
});

/** By the definition: where it was 2.5 s before and after, on straight lines, no farther than the gaps around it. */
function byDefinition(i: number): number {
  const isGap = (k: number) => timeS[k + 1]! - timeS[k]! > track.gapLimitS;
  let first = i;
  while (first > 0 && !isGap(first - 1)) first--;
  let last = i;
  while (last + 1 < timeS.length && !isGap(last)) last++;
  const there = (column: Float64Array, s: number) => {
    const clipped = Math.min(timeS[last]!, Math.max(timeS[first]!, s));
    const before = Math.max(
      first,
      timeS.findLastIndex((one) => one <= clipped),
    );
    const next = Math.min(last, before + 1);
    const share = next === before ? 0 : (clipped - timeS[before]!) / (timeS[next]! - timeS[before]!);
    return column[before]! + share * (column[next]! - column[before]!);
  };
  const change = (column: Float64Array) => there(column, timeS[i]! + 2.5) - there(column, timeS[i]! - 2.5);
  const isFar = Math.hypot(deviations.alongCourseNm[i]!, deviations.acrossCourseNm[i]!) > 25;
  if (isFar || first === last) return NaN;
  return (Math.atan2(change(deviations.acrossCourseNm), -change(deviations.alongCourseNm)) * 180) / Math.PI;
}

describe('the angle of the track to the course', () => {
  it('is that of the movement over 5 s, whichever fix is asked for first', () => {
    const angles = courseAngles(track, deviations);
    const order = timeS.map((_, i) => (i * 1777) % timeS.length);
    for (const i of order) {
      const wanted = byDefinition(i);
      if (Number.isNaN(wanted)) expect(angles.at(i), `${timeS[i]} s`).toBeNaN();
      else expect(Math.abs(angles.at(i) - wanted), `${timeS[i]} s`).toBeLessThan(1e-9);
    }
  });

  it('is not known of a fix alone between two gaps, nor farther than 25 NM out', () => {
    const angles = courseAngles(track, deviations);
    expect(angles.at(timeS.indexOf(108))).toBeNaN();
    expect(angles.at(0)).toBeNaN();
    expect(angles.at(timeS.indexOf(115))).not.toBeNaN();
  });
});
