import { describe, expect, it } from 'vitest';
import { altimeterShowsFt, altitudeShownAsFt } from '../../../core/briefing/altimeter.ts';
import table from '../../reference/cold-temperature-error.json' with { type: 'json' };

const CELLS = table.rows.flatMap(({ temperature_c, error_ft }) =>
  table.height_ft.map((height, i) => [temperature_c, height, error_ft[i]!] as const),
);

// FAA AIM 4/3/14 TBL 7-2-3, ICAO origin (published): charted height and correction, rounded up to 10 ft.
it.each(CELLS)(
  'at %d °C and %d ft above the aerodrome it shows the published %d ft more',
  (c, height, more) => {
    const air = { elevationFt: 3206, temperatureC: c };
    const shown = altimeterShowsFt(air, 3206 + height) - (3206 + height);
    expect(Math.ceil(shown / 10) * 10).toBe(more);
  },
);

// FAA AIM (published), worked at an elevation of 3,206 ft and −12 °C: 6,200 + 300, 4,520 + about 150, 12,000 + 500; the
// formula behind the table makes 313, 137 and 527 of them (computed).
it.each([
  [6200, 300, 313],
  [4520, 150, 137],
  [12_000, 500, 527],
])('at −12 °C the altimeter at %d ft shows %d more by the table, %d by the formula', (ft, rounded, exact) => {
  const more = altimeterShowsFt({ elevationFt: 3206, temperatureC: -12 }, ft) - ft;
  expect(more).toBeCloseTo(exact, 0);
  expect(Math.abs(more - rounded)).toBeLessThan(30);
});

describe('the altitude at which an altimeter shows so much', () => {
  it.each([-50, -20, 15, 40])('undoes what it shows, at %d °C', (temperatureC) => {
    const air = { elevationFt: 100, temperatureC };
    for (const ft of [100, 312, 1112, 4000, 9000])
      expect(altitudeShownAsFt(air, altimeterShowsFt(air, ft))).toBeCloseTo(ft, 5);
  });

  it('is lower than shown in cold air, higher in warm, and the same where no temperature is known', () => {
    expect(altitudeShownAsFt({ elevationFt: 0, temperatureC: -30 }, 1000)).toBeLessThan(900);
    expect(altitudeShownAsFt({ elevationFt: 0, temperatureC: 40 }, 1000)).toBeGreaterThan(1050);
    expect(altitudeShownAsFt({ elevationFt: 0, temperatureC: null }, 1000)).toBe(1000);
    expect(altimeterShowsFt({ elevationFt: 0, temperatureC: null }, 1000)).toBe(1000);
  });
});
