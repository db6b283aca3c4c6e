import { describe, expect, it } from 'vitest';
import { within } from '../../../core/standard/within.ts';
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
