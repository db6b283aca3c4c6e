import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bendsOf } from '../../../core/numeric/straight-pieces.ts';

const line = (...value: number[]) => ({
  timeS: Float64Array.from(value, (_, i) => 2 * i),
  value: Float64Array.from(value),
});

describe('the bends of a line', () => {
  it('are its ends where it is straight, or nearly so', () => {
    expect(bendsOf(line(0, 1, 2, 3), 0.5)).toEqual([0, 3]);
    expect(bendsOf(line(0, 5), 0)).toEqual([0, 1]);
    // Off the straight line by 10, and that is allowed; by a hair more it is not.
    expect(bendsOf(line(0, 10, 0), 10)).toEqual([0, 2]);
    expect(bendsOf(line(0, 10.01, 0), 10)).toEqual([0, 1, 2]);
  });

  it('are where it turns, rests and goes on', () => {
    expect(bendsOf(line(0, 0, 0, 20, 40, 40, 40, 0), 5)).toEqual([0, 2, 4, 6, 7]);
  });

  it('leave no point farther from the straight lines between them than allowed', () => {
    const walk = fc.array(fc.integer({ min: -30, max: 30 }), { minLength: 2, maxLength: 60 });
    fc.assert(
      fc.property(walk, fc.integer({ min: 0, max: 20 }), (value, within) => {
        const bends = bendsOf(line(...value), within);
        expect([bends[0], bends.at(-1)]).toEqual([0, value.length - 1]);
        for (const [k, to] of bends.slice(1).entries()) {
          const from = bends[k]!;
          expect(to).toBeGreaterThan(from);
          for (let i = from; i <= to; i++) {
            const share = (i - from) / (to - from);
            const straight = value[from]! * (1 - share) + value[to]! * share;
            expect(Math.abs(value[i]! - straight)).toBeLessThanOrEqual(within + 1e-9);
          }
        }
      }),
    );
  });
});
