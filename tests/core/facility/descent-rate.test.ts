import { describe, expect, it } from 'vitest';
import { descentRateFpm, gradientFtPerNm } from '../../../core/facility/descent-rate.ts';
import table from '../../reference/rate-of-descent.json' with { type: 'json' };

const rowsOf = (name: string) => table.rows.filter((row) => row.table === name);

const toleranceFpm = (angleDeg: number): number =>
  angleDeg <= 4 ? 4.95 : angleDeg <= 4.5 ? 5.55 : angleDeg <= 5 ? 6.95 : 11.25;

/**
 * NOAA/FAA Instrument Approach Procedure Charts, Rate of Descent Table, read in a reprint [published]. It is
 * rounded to 5 ft/min and rests on sin, speed along the path; ours is for groundspeed, so on tan, and the
 * difference grows with the angle: the table states how far.
 */
describe('the FAA rate of descent table is met as nearly as sin and tan are alike', () => {
  const angles = [...new Set(rowsOf('faa-iap').map((row) => row.angle_deg))];
  it.each(angles)('%f degrees, 30 to 180 kt', (angleDeg) => {
    const rows = rowsOf('faa-iap').filter((row) => row.angle_deg === angleDeg);
    expect(rows.length).toBeGreaterThan(5);
    for (const { groundspeed_kt: kt, fpm, computed_tan_fpm: exactFpm } of rows) {
      expect(Math.abs(descentRateFpm(kt!, angleDeg) - fpm!)).toBeLessThanOrEqual(toleranceFpm(angleDeg));
      expect(Math.abs(descentRateFpm(kt!, angleDeg) - exactFpm!)).toBeLessThanOrEqual(0.006);
    }
  });
});

/** An airline operator's table for non-precision approaches [second-hand]. */
describe('an operator’s table of gradients and rates is met within its rounding', () => {
  const angles = [...new Set(rowsOf('operator-npa').map((row) => row.angle_deg))];
  it.each(angles)('%f degrees', (angleDeg) => {
    for (const row of rowsOf('operator-npa').filter((each) => each.angle_deg === angleDeg)) {
      expect(Math.abs(gradientFtPerNm(angleDeg) - row.ft_per_nm!)).toBeLessThanOrEqual(0.7);
      const { groundspeed_kt: kt, fpm } = row;
      expect(Math.abs(descentRateFpm(kt!, angleDeg) - fpm!)).toBeLessThanOrEqual(2.6);
    }
  });
});

/** 6076.1155 × tan of the angle [computed]. */
describe('gradients', () => {
  it.each(rowsOf('gradient').map((row) => [row.angle_deg, row.ft_per_nm!]))(
    '%f degrees: %f ft/NM',
    (angleDeg, ft) => {
      expect(Math.abs(gradientFtPerNm(angleDeg) - ft)).toBeLessThanOrEqual(0.006);
    },
  );

  /** TERPS nonprecision final [second-hand]: 400 ft/NM is 3.77 degrees. */
  it('3.77 degrees is the steepest nonprecision final, 400 ft/NM', () => {
    expect(gradientFtPerNm(3.77)).toBeCloseTo(400.4, 1);
  });
});

/** 3 degrees, FAA rate of descent table [published] and the exact figure [computed], at 90, 120 and 150 kt. */
describe('the rate that pilots remember', () => {
  it.each([
    [90, 478, 480],
    [120, 637, 635],
    [150, 796, 795],
  ])('%i kt on 3 degrees', (kt, fpm, tabled) => {
    expect(Math.abs(descentRateFpm(kt, 3) - fpm)).toBeLessThanOrEqual(0.5);
    expect(Math.abs(descentRateFpm(kt, 3) - tabled)).toBeLessThanOrEqual(5);
  });

  it('standing still needs none', () => {
    expect(descentRateFpm(0, 3)).toBe(0);
  });
});

/** Five times the groundspeed for 3 degrees [common practice, no source]: 6 % less than the path asks for. */
describe('five times the groundspeed', () => {
  it.each([60, 90, 120, 150, 180])('at %i kt is the rate of descent within eight percent', (kt) => {
    const ratio = descentRateFpm(kt, 3) / (5 * kt);
    expect(ratio).toBeGreaterThan(1);
    expect(ratio).toBeLessThan(1.08);
  });
});
