import { describe, expect, it } from 'vitest';
import { decimalYear } from '../../../core/earth/magnetic.ts';
import { facilityOf, issuesOf, LEAST } from './full-facility.ts';
import { cycleCautions } from '../../../core/facility/cycle-cautions.ts';

const of = (cycle: string) => ({ ...LEAST, origin: { cycle } });
const at = (utc: string) => decimalYear(Date.parse(utc) / 1000);
const saidOn = (utc: string, cycle = '2609') =>
  cycleCautions(facilityOf(of(cycle)), at(utc)).map(({ message }) => message);

describe('a facility from records of a cycle', () => {
  // FAA CIFP, its header: cycle 2609 is effective 3 September 2026; 28 days.
  it('is cautioned of on a day outside of it, with all of the days', () => {
    expect(saidOn('2026-10-01T00:00:00Z')).toEqual([
      'The facility is from records of cycle 2609, 2026-09-03 to 2026-09-30: on 2026-10-01 they are no longer in force.',
    ]);
    expect(saidOn('2026-09-02T23:59:59Z')).toEqual([
      'The facility is from records of cycle 2609, 2026-09-03 to 2026-09-30: on 2026-09-02 they are not yet in force.',
    ]);
    expect(issuesOf(of('2609'), at('2026-10-01T00:00:00Z')).map(({ code }) => code)).toContain(
      'facility-cycle',
    );
  });

  it('is not on its first day, its last, nor where nobody knows the day', () => {
    expect(saidOn('2026-09-03T00:00:00Z')).toEqual([]);
    expect(saidOn('2026-09-30T23:59:59Z')).toEqual([]);
    expect(cycleCautions(facilityOf(of('2609')), null)).toEqual([]);
    expect(cycleCautions(facilityOf(LEAST), at('2026-10-01T00:00:00Z'))).toEqual([]);
  });

  it('has every midnight on the day that it begins', () => {
    for (let ms = Date.UTC(2020, 0, 30); ms < Date.UTC(2030, 0, 1); ms += 86_400_000) {
      const day = new Date(ms).toISOString().slice(0, 10);
      expect(saidOn(day, '2001')[0]).toContain(`: on ${day} they are no longer in force.`);
    }
  });

  it('is told that nobody can say so where the cycle is none', () => {
    expect(saidOn('2026-10-01T00:00:00Z', '2677')[0]).toContain('cycle 2677, which is none');
    expect(() => facilityOf(of('26-09'))).toThrow(/four digits/);
  });
});
