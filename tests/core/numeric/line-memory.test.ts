import { describe, expect, it } from 'vitest';
import { LazyColumn } from '../../../core/numeric/lazy-column.ts';
import { LineMemory } from '../../../core/numeric/line-memory.ts';
import { clip } from '../../../core/numeric/polyline.ts';

/** A fix a second, with a gap of ten seconds after 50 s. */
const timeS = Float64Array.from({ length: 100 }, (_, i) => (i <= 50 ? i : i + 10));
const GAP_S = 5;
const column = (of: (s: number) => number) => timeS.map(of);
const rising = column((s) => s * s);
const falling = column((s) => -s);
const lazily = (values: Float64Array) =>
  new LazyColumn(values.length, (block, first) => block.set(values.subarray(first, first + block.length)));

describe('lines over spans', () => {
  const SPANS = [
    [0, 109],
    [3.25, 40.75],
    [10, 10.5],
    [40, 70],
    [50, 60],
    [70, 70],
    [-5, 200],
  ] as const;

  it('are those that are cut out anew, also when they are asked for again and of another column', () => {
    const memory = new LineMemory(timeS, GAP_S);
    const holed = column((s) => (s % 7 === 0 ? NaN : s));
    for (let k = 0; k < 2; k++)
      for (const values of [rising, falling, holed])
        for (const [startS, endS] of SPANS) {
          const cutOut = clip(timeS, values, { startS, endS }, GAP_S);
          expect(memory.over(values, { startS, endS })).toEqual(cutOut);
          expect(memory.over(lazily(values), { startS, endS })).toEqual(cutOut);
        }
  });

  it('are cut once, and share their times', () => {
    const memory = new LineMemory(timeS, GAP_S);
    const span = { startS: 3.25, endS: 40.75 };
    const [first] = memory.over(rising, span);
    expect(memory.over(rising, { ...span })[0]).toBe(first);
    expect(memory.over(falling, span)[0]!.timeS).toBe(first!.timeS);
    expect(memory.over(falling, { ...span, endS: 40.5 })[0]!.timeS).not.toBe(first!.timeS);
  });

  it('are right however many were asked for before', () => {
    const memory = new LineMemory(timeS, GAP_S);
    for (let k = 0; k < 1000; k++) {
      const span = { startS: k / 25, endS: 45 };
      expect(memory.over(falling, span)[0]!.value[0]).toBeCloseTo(-k / 25, 12);
    }
    expect(memory.over(falling, { startS: 1, endS: 2 })).toEqual(
      clip(timeS, falling, { startS: 1, endS: 2 }, GAP_S),
    );
  });
});
