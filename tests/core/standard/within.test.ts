import { describe, expect, it } from 'vitest';
import { verdictWithin, within } from '../../../core/standard/within.ts';
import { SHIPPED } from '../../../core/standard/standards.ts';
import { limitsOf } from './limits-of.ts';

/** The next number up or down that a log could hold: far below any needle's resolution. */
const HAIR = 1e-9;

const EDGES = SHIPPED.flatMap((standard) =>
  limitsOf(standard).flatMap(([path, limit]) => {
    const sides: [string, typeof limit, number, number][] = [];
    if (limit.lower !== null) sides.push([`${standard.id} ${path}, lower`, limit, limit.lower, -1]);
    if (limit.upper !== null) sides.push([`${standard.id} ${path}, upper`, limit, limit.upper, 1]);
    return sides;
  }),
);

describe('exactly at a limit is inside, a hair beyond is outside', () => {
  it('on every side of every shipped limit', () => expect(EDGES.length).toBeGreaterThan(60));

  it.each(EDGES)('%s', (_name, limit, edge, outwards) => {
    expect(within(limit, edge)).toBe(true);
    expect(within(limit, edge + outwards * HAIR)).toBe(false);
    expect(within(limit, edge - outwards * HAIR)).toBe(true);
  });
});

describe('a side without a limit never fails', () => {
  it.each([
    [{ lower: null, upper: 1000 }, -1e9, true],
    [{ lower: null, upper: 1000 }, 1000.001, false],
    [{ lower: -75, upper: null }, 1e9, true],
    [{ lower: -75, upper: null }, -75.001, false],
    [{ lower: null, upper: null }, 1e9, true],
  ])('%j and %d: %s', (limit, value, inside) => expect(within(limit, value)).toBe(inside));
});

describe('a value that may be off by a quarter', () => {
  // Binary fractions: at the edges nothing is a hair off.
  it.each([
    [0.5, 'met', 'may just reach its limit, where it is inside'],
    [0.75, 'unclear', 'stands at its limit'],
    [1, 'unclear', 'may just not be beyond'],
    [1.0625, 'not-met', 'is beyond either way'],
  ] as const)('at %d of at most 0.75 is %s: it %s', (value, verdict, _why) => {
    expect(verdictWithin({ lower: -0.75, upper: 0.75 }, value, 0.25)).toBe(verdict);
    expect(verdictWithin({ lower: -0.75, upper: 0.75 }, -value, 0.25)).toBe(verdict);
    expect(verdictWithin({ lower: null, upper: 0.75 }, -value, 0.25)).toBe('met');
  });
});
