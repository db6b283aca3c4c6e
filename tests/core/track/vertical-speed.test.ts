import { describe, expect, it } from 'vitest';
import { verticalSpeedAt, verticalSpeedFromHeights } from '../../../core/track/vertical-speed.ts';

const START_S = 1_700_000_000;
const times = (n: number, stepS = 1) => Float64Array.from({ length: n }, (_, i) => START_S + i * stepS);
const sinking = (timeS: Float64Array, fpm: number) => timeS.map((t) => 3000 + ((t - START_S) * fpm) / 60);

describe('verticalSpeedFromHeights', () => {
  it.each([1, 0.1, 5])('is exact on a steady descent at an interval of %d s', (stepS) => {
    const timeS = times(40, stepS);
    const fitted = verticalSpeedFromHeights(timeS, sinking(timeS, -640), []);
    if (stepS === 5) for (const fpm of fitted) expect(fpm).toBeNaN();
    else for (const fpm of fitted) expect(fpm).toBeCloseTo(-640, 3);
  });

  it.each([0, 3, 15, 28])('is not moved by one wrong height, at fix %d', (wrong) => {
    const timeS = times(30);
    const heightFt = sinking(timeS, -500);
    heightFt[wrong]! += 400;
    const fitted = verticalSpeedFromHeights(timeS, heightFt, []);
    fitted.forEach((fpm, i) => {
      // The first and last three fixes see less than the whole window: a wrong height at its end hides there.
      if (i >= 3 && i <= 26) expect(Math.abs(fpm + 500)).toBeLessThan(1);
    });
  });

  it('passes over heights that are missing', () => {
    const timeS = times(20);
    const heightFt = sinking(timeS, -700);
    heightFt[9] = NaN;
    heightFt[10] = NaN;
    expect(verticalSpeedFromHeights(timeS, heightFt, [])[10]).toBeCloseTo(-700, 3);
  });

  it('does not look across a gap', () => {
    const timeS = Float64Array.of(0, 1, 2, 3, 10, 11, 12, 13);
    const heightFt = Float64Array.of(1000, 990, 980, 970, 500, 510, 520, 530);
    const fitted = verticalSpeedFromHeights(timeS, heightFt, [{ beforeIndex: 3, startS: 3, endS: 10 }]);
    expect(fitted[3]).toBeCloseTo(-600, 6);
    expect(fitted[4]).toBeCloseTo(600, 6);
  });

  it('takes in heights exactly 3 s away and none farther', () => {
    const timeS = Float64Array.of(0, 3, 6.01);
    const heightFt = Float64Array.of(100, 130, 1000);
    expect(verticalSpeedFromHeights(timeS, heightFt, [])[1]).toBeCloseTo(600, 6);
  });

  it('knows nothing from one height', () => {
    expect(verticalSpeedFromHeights(Float64Array.of(5), Float64Array.of(100), [])[0]).toBeNaN();
  });
});

describe('the fit at one moment', () => {
  const timeS = Float64Array.from([0, 1, 2, 3, 4, 5, 6, 20, 21, 22, 23]);
  const heightFt = timeS.map((s) => 1000 - 8 * s + 5 * Math.sin(s));
  const gaps = [{ beforeIndex: 6, startS: 6, endS: 20 }];

  it('is at a fix the one of that fix, also at the edge of a gap', () => {
    const fitted = verticalSpeedFromHeights(timeS, heightFt, gaps);
    const there = timeS.map((s, i) => verticalSpeedAt({ timeS, altitudeFt: heightFt }, s, i));
    expect([...there]).toEqual([...fitted]);
  });

  it('is between fixes that of the heights within 3 s of it', () => {
    const [x, y] = [
      [0, 1, 2, 3, 4, 5],
      [1000, 990, 981, 974, 966, 957],
    ];
    const between = verticalSpeedAt(
      { timeS: Float64Array.from(x), altitudeFt: Float64Array.from(y) },
      2.5,
      2,
    );
    // By hand: Σ(x − 2.5)(y − 978) = −147 over Σ(x − 2.5)² = 17.5, ft a second; no height is an outlier.
    expect(between).toBeCloseTo((-60 * 147) / 17.5, 9);
  });

  it('is between fixes that of a straight descent', () => {
    const altitudeFt = timeS.map((s) => 1000 - 8 * s);
    for (const [s, fix] of [
      [0.5, 0],
      [3.3, 3],
      [5.99, 5],
      [20.01, 7],
    ] as const)
      expect(verticalSpeedAt({ timeS, altitudeFt }, s, fix)).toBeCloseTo(-480, 6);
    expect(verticalSpeedAt({ timeS, altitudeFt: timeS.map(() => NaN) }, 3, 3)).toBeNaN();
  });

  it('looks no farther than 3 s, not even to the fix before the moment', () => {
    const slow = { timeS: Float64Array.of(0, 4, 8), altitudeFt: Float64Array.of(1000, 900, 800) };
    expect(verticalSpeedAt(slow, 3.5, 0)).toBeNaN();
  });
});
