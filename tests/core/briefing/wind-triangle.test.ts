import { describe, expect, it } from 'vitest';
import { holdingCourse, windOnCourse } from '../../../core/briefing/wind-triangle.ts';

// By hand: a wind of 20 kt against a course of 090.
describe('a wind on a course', () => {
  it.each([
    ['from ahead', 90, 20, 0],
    ['from behind', 270, -20, 0],
    ['from the right', 180, 0, 20],
    ['from the left', 0, 0, -20],
    ['from 30 degrees to the right of ahead', 120, 17.32, 10],
    ['from 60 degrees to the left of behind', 330, -10, -17.32],
  ])('%s', (_, fromTrueDeg, headwindKt, crosswindFromRightKt) => {
    const wind = windOnCourse(90, { fromTrueDeg, speedKt: 20 });
    expect(wind.headwindKt).toBeCloseTo(headwindKt, 2);
    expect(wind.crosswindFromRightKt).toBeCloseTo(crosswindFromRightKt, 2);
  });
});

describe('the heading that holds a course', () => {
  // By hand: the triangle of sides 3, 4 and 5: 60 kt across, 100 kt through the air, 80 along, less 20 of headwind.
  it('points into the wind, and what is left goes along', () => {
    const held = holdingCourse(100, { headwindKt: 20, crosswindFromRightKt: 60 })!;
    expect(held.correctionDeg).toBeCloseTo(36.87, 2);
    expect(held.groundspeedKt).toBeCloseTo(60, 9);
  });

  it('from the left it points left', () => {
    expect(holdingCourse(90, { headwindKt: 0, crosswindFromRightKt: -9 })!.correctionDeg).toBeCloseTo(
      -5.74,
      2,
    );
  });

  it('there is none in a crosswind faster than the aircraft, nor in a headwind as fast', () => {
    expect(holdingCourse(60, { headwindKt: 0, crosswindFromRightKt: 61 })).toBeNull();
    expect(holdingCourse(60, { headwindKt: 60, crosswindFromRightKt: 0 })).toBeNull();
  });

  it('adds up again: through the air and with the air is over the ground', () => {
    for (const fromTrueDeg of [10, 100, 200, 300]) {
      const wind = windOnCourse(46, { fromTrueDeg, speedKt: 25 });
      const { correctionDeg, groundspeedKt } = holdingCourse(90, wind)!;
      const rad = Math.PI / 180;
      const [heading, from] = [(46 + correctionDeg) * rad, fromTrueDeg * rad];
      const north = 90 * Math.cos(heading) - 25 * Math.cos(from);
      const east = 90 * Math.sin(heading) - 25 * Math.sin(from);
      expect(north).toBeCloseTo(groundspeedKt * Math.cos(46 * rad), 9);
      expect(east).toBeCloseTo(groundspeedKt * Math.sin(46 * rad), 9);
    }
  });
});
