import { describe, expect, it } from 'vitest';
import { seededRandom } from './random.ts';
import { CALM, meanWind, windyAir } from './wind.ts';

const plan = {
  surface: { fromTrueDeg: 270, speedKt: 10 },
  at2000Ft: { fromTrueDeg: 360, speedKt: 20 },
  gustKt: 0,
  verticalGustFpm: 60,
};

describe('the wind', () => {
  it('from the west blows towards the east, and from the north towards the south', () => {
    const low = meanWind(plan, 0);
    expect([low.eastKt, low.northKt]).toEqual([expect.closeTo(10, 9), expect.closeTo(0, 9)]);
    const high = meanWind(plan, 2000);
    expect([high.eastKt, high.northKt]).toEqual([expect.closeTo(0, 9), expect.closeTo(-20, 9)]);
  });

  it('changes in a straight line between the two heights and not beyond them', () => {
    expect(meanWind(plan, 1000).eastKt).toBeCloseTo(5, 9);
    expect(meanWind(plan, 1000).northKt).toBeCloseTo(-10, 9);
    expect(meanWind(plan, 6000)).toEqual(meanWind(plan, 2000));
    expect(meanWind(plan, -50)).toEqual(meanWind(plan, 0));
  });

  it('neither rises nor sinks at the ground', () => {
    const air = windyAir(plan, seededRandom('ground'));
    expect(Math.abs(air(0, 0.1).upFpm)).toBe(0);
    expect(Math.abs(air(1000, 0.1).upFpm)).toBeGreaterThan(0);
  });

  it('in calm is nothing at all', () => {
    const air = windyAir(CALM, seededRandom('calm'));
    const now = air(500, 0.1);
    expect(Math.abs(now.eastKt) + Math.abs(now.northKt) + Math.abs(now.upFpm)).toBe(0);
  });
});
