import { describe, expect, it } from 'vitest';
import { altimeterShowsFt, altitudeShownAsFt, correctedByTableFt } from '../../../core/briefing/altimeter.ts';
import table from '../../reference/cold-temperature-error.json' with { type: 'json' };

const CELLS = table.rows.flatMap(({ temperature_c, error_ft }) =>
  table.height_ft.map((height, i) => [temperature_c, height, error_ft[i]!] as const),
);

// FAA AIM 4/3/14 TBL 7-2-3, ICAO origin (published): charted height and correction, rounded up to 10 ft.
it.each(CELLS)(
  'at %d °C and %d ft above one at sea level it shows the published %d ft more',
  (c, height, more) => {
    const shown = altimeterShowsFt({ elevationFt: 0, temperatureC: c }, height) - height;
    expect(Math.ceil(shown / 10) * 10).toBe(more);
  },
);

// FAA AIM (published), worked at an elevation of 3,206 ft and −12 °C: 6,200 + 300, 4,520 + about 150, 12,000 + 500; the
// formula behind the table makes 313, 137 and 527 of them (computed).
it.each([
  [6200, 300, 313],
  [4520, 150, 137],
  [12_000, 500, 527],
])('at −12 °C the altimeter at %d ft shows %d more by the table, %d by its formula', (ft, rounded, exact) => {
  const air = { elevationFt: 3206, temperatureC: -12 };
  const more = correctedByTableFt(air, ft)! - ft;
  expect(more).toBeCloseTo(exact, 0);
  expect(Math.abs(more - rounded)).toBeLessThan(30);
  // In truth less: the table takes the −12 °C for those of sea level, where it is −5.7 °C in this air.
  const shows = altimeterShowsFt(air, ft) - ft;
  expect(shows).toBeGreaterThan(0.7 * more);
  expect(shows).toBeLessThan(0.85 * more);
});

describe('the altitude at which an altimeter shows so much', () => {
  it.each([-50, -20, 15, 40])('undoes what it shows, at %d °C', (temperatureC) => {
    for (const elevationFt of [-1240, 100, 9000])
      for (const heightFt of [-50, 0, 212, 1012, 4000, 4999, 5001, 9000]) {
        const air = { elevationFt, temperatureC };
        const ft = elevationFt + heightFt;
        expect(altitudeShownAsFt(air, altimeterShowsFt(air, ft))).toBeCloseTo(ft, 6);
      }
  });

  it('is lower than shown in cold air, higher in warm, and the same where no temperature is known', () => {
    expect(altitudeShownAsFt({ elevationFt: 0, temperatureC: -30 }, 1000)).toBeLessThan(900);
    expect(altitudeShownAsFt({ elevationFt: 0, temperatureC: 40 }, 1000)).toBeGreaterThan(1050);
    expect(altitudeShownAsFt({ elevationFt: 0, temperatureC: null }, 1000)).toBe(1000);
    expect(altimeterShowsFt({ elevationFt: 0, temperatureC: null }, 1000)).toBe(1000);
  });
});
