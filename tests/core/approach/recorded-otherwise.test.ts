import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  between,
  debriefRows,
  differences,
  expectAlike,
  FLIGHTS,
  foundIn,
  rowsOf,
  type Rows,
} from './flight-variants.ts';

const truthOf = (wanted: string) => FLIGHTS.find(({ name }) => name === wanted)!.truth();
const later = (rows: Rows, s: number): Rows => ({ ...rows, timeS: rows.timeS.map((timeS) => timeS + s) });

describe.each(FLIGHTS)('$name', ({ truth }) => {
  it('recorded once a second is the same as ten times a second', () => {
    const fast = debriefRows(rowsOf(truth(), 1)).approaches;
    const slow = debriefRows(rowsOf(truth(), 10)).approaches;
    expectAlike(fast, slow);
  });

  it.each([
    ['by five hours', '2026-03-14T14:00:00Z'],
    ['over midnight', '2026-03-14T23:57:00Z'],
    ['over the end of a year', '2027-12-31T23:57:00Z'],
    ['over a leap day', '2028-02-28T23:57:00Z'],
  ])('shifted %s has every time shifted, and all else as it was', (_name, startUtc) => {
    const rows = rowsOf(truth());
    const byS = Date.parse(startUtc) / 1000 - rows.timeS[0]!;
    const plain = foundIn(debriefRows(rows));
    const shifted = foundIn(debriefRows(later(rows, byS)));
    expect(
      differences(shiftedBy(plain, byS), shifted, {
        number: (_path, size) => 1e-4 * size,
        seconds: () => 0.0011,
      }),
    ).toEqual([]);
  });
});

describe('a log cut in two', () => {
  it('between two approaches has one in each half, as they were', () => {
    const rows = rowsOf(truthOf('two approaches'));
    const [first, second] = debriefRows(rows).approaches;
    const startS = Date.parse(second!.startUtc) / 1000;
    const halves = [
      between(rows, (timeS) => timeS < startS - 30),
      between(rows, (timeS) => timeS >= startS - 30),
    ].map((half) => debriefRows(half).approaches);
    expect(halves.map((approaches) => approaches.length)).toEqual([1, 1]);
    const exact = { number: () => 1e-9, seconds: () => 0 };
    expect(differences(first, halves[0]![0], exact)).toEqual([]);
    expect(differences({ ...second, index: 1 }, halves[1]![0], exact)).toEqual([]);
  });

  it('on final is incomplete, and nothing earlier has changed', () => {
    const rows = rowsOf(truthOf('a landing'));
    const [whole] = debriefRows(rows).approaches;
    const final = whole!.segments.find(({ kind }) => kind === 'final')!;
    const [fromS, toS] = [Date.parse(final.startUtc) / 1000, Date.parse(final.endUtc) / 1000];
    fc.assert(
      fc.property(fc.double({ min: 0.4, max: 1, noNaN: true }), (share) => {
        const cutS = fromS + share * (toS - fromS);
        const [cut] = debriefRows(between(rows, (timeS) => timeS <= cutS)).approaches;
        expect(cut!.outcome).toBe('incomplete');
        // A hold takes 10 s to be seen, and a fit looks 3 s ahead.
        const settled = <E extends { utc: string }>(events: readonly E[]) =>
          events.filter(({ utc }) => Date.parse(utc) / 1000 < cutS - 15);
        expect(settled(cut!.events)).toEqual(settled(whole!.events));
        expect(settled(cut!.events).length).toBeGreaterThan(3);
        expect(cut!.segments[0]).toEqual(whole!.segments[0]);
      }),
      { numRuns: 10 },
    );
  });
});

/** An answer with every time moved, and the clock in its sentences with it. */
function shiftedBy(value: unknown, byS: number): unknown {
  if (typeof value === 'string') {
    if (/^\d{4}-\d\d-\d\dT.*Z$/.test(value)) return new Date(Date.parse(value) + byS * 1000).toISOString();
    return value.replace(/\d\d:\d\d(?= UTC)/, (clock) => {
      const minutes = (Date.parse(`2026-03-14T${clock}:00Z`) / 1000 + byS) * 1000;
      return new Date(minutes).toISOString().slice(11, 16);
    });
  }
  if (value === null || typeof value !== 'object') return value;
  if (Array.isArray(value)) return value.map((item) => shiftedBy(item, byS));
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, shiftedBy(item, byS)]));
}
