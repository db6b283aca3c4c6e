import { afterEach, describe, expect, it, vi } from 'vitest';
import { decimalYear, magneticDeclinationDeg } from '../../../core/earth/magnetic.ts';
import table from '../../reference/magnetic-declination.json' with { type: 'json' };

const WMM2020_SOURCE = 'NOAA/NCEI WMM2020_TEST_VALUES.txt';
const WMM2025_SOURCE = 'NOAA/NCEI WMM2025_TEST_VALUES.txt, read in a transcription';
/** The tables print 0.01 degrees: half of that, and a little for the last digit's rounding. */
const TOLERANCE_DEG = 0.006;

describe('a published test value of the World Magnetic Model is met to its last digit', () => {
  it.each(
    table.rows.map((row) => {
      const source = row.model === 'WMM2020' ? WMM2020_SOURCE : WMM2025_SOURCE;
      const place = `${row.lat}, ${row.lon}, ${row.height_km} km, ${row.decimal_year}`;
      return [`${source}: ${place} [${row.status}]`, row] as const;
    }),
  )('%s', (_, row) => {
    const position = { latDeg: row.lat, lonDeg: row.lon };
    const found = magneticDeclinationDeg(position, row.height_km * 1000, row.decimal_year);
    expect(Math.abs(found! - row.declination_deg)).toBeLessThanOrEqual(TOLERANCE_DEG);
  });
});

describe('each model holds for its own five years', () => {
  const position = { latDeg: 47, lonDeg: -35 };
  const at = (year: number) => magneticDeclinationDeg(position, 0, year);

  it('before 2020.0, after 2030.0 and on an unknown day the declination is unknown', () => {
    expect(at(2019.999)).toBeNull();
    expect(at(2030.001)).toBeNull();
    expect(at(1950)).toBeNull();
    expect(at(Number.NaN)).toBeNull();
  });

  it('both ends of each five years are inside, the last weeks too', () => {
    for (const year of [2020, 2024.99, 2025, 2029.9, 2030]) expect(at(year)).toBeCloseTo(-12, -1);
  });

  it('the older model goes on to the last day of 2024, the newer begins on New Year', () => {
    const runsOn = 2 * at(2024.49)! - at(2023.99)!;
    const runsBack = 2 * at(2025.5)! - at(2026)!;
    expect(Math.abs(at(2024.99)! - runsOn)).toBeLessThan(0.001);
    expect(Math.abs(at(2025)! - runsBack)).toBeLessThan(0.001);
    const step = at(2025)! - at(2024.9999)!;
    expect(Math.abs(step)).toBeGreaterThan(0.005);
    expect(Math.abs(step)).toBeLessThan(0.5);
  });
});

const ask = () => magneticDeclinationDeg({ latDeg: 60, lonDeg: 10 }, 300, 2021.25);

const seconds = (iso: string) => Date.parse(iso) / 1000;

describe('the day is the one asked for, never today', () => {
  afterEach(() => vi.useRealTimers());

  it('the answer is the same whatever the machine’s clock shows', () => {
    vi.useFakeTimers({ now: new Date('2020-02-01T00:00:00Z') });
    const early = ask();
    vi.setSystemTime(new Date('2035-02-01T00:00:00Z'));
    expect(ask()).toBe(early);
  });

  it('a moment is turned into a decimal year, leap years included', () => {
    expect(decimalYear(seconds('2024-01-01T00:00:00Z'))).toBe(2024);
    expect(decimalYear(seconds('2024-07-02T00:00:00Z'))).toBe(2024.5);
    expect(decimalYear(seconds('2023-07-02T12:00:00Z'))).toBe(2023.5);
    expect(decimalYear(seconds('2023-12-31T23:59:59Z'))).toBeLessThan(2024);
    expect(decimalYear(Number.NaN)).toBeNaN();
  });
});
