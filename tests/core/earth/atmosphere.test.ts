import { describe, expect, it } from 'vitest';
import {
  pressureAltitudeFt,
  temperatureErrorFt,
  trueOverIndicated,
  warmerThanStandardC,
} from '../../../core/earth/atmosphere.ts';
import table from '../../reference/cold-temperature-error.json' with { type: 'json' };

// Computed from the standard atmosphere of ICAO Doc 7488 (second-hand), to 0.01 ft; the second column to a foot.
describe('pressure altitude', () => {
  it.each([
    [1013.25, 0, 0.001],
    [1003.25, 274.2, 0.01],
    [1023.25, -272.02, 0.01],
    [980, 920.38, 0.01],
    [1040, -722.87, 0.01],
    [977.166, 1000, 0.1],
    [843.073, 5000, 0.1],
    [696.816, 10_000, 0.1],
  ])('of %d hPa is %d ft', (hPa, ft, within) => {
    expect(Math.abs(pressureAltitudeFt(hPa) - ft)).toBeLessThanOrEqual(within);
  });
});

// One over the root of the density ratio of ICAO Doc 7488 (second-hand): 1, 0.8617, 0.7385; denser below the sea.
it.each([
  [0, 1],
  [5000, 0.8617],
  [10_000, 0.7385],
  [-1000, 1.0296],
])('true over indicated airspeed at %d ft', (altitudeFt, densityRatio) => {
  expect(trueOverIndicated(altitudeFt)).toBeCloseTo(1 / Math.sqrt(densityRatio), 4);
});

// FAA AIM 4/3/14 TBL 7-2-3, ICAO origin (published), and the formula of ICAO Doc 8168 (second-hand).
describe('the temperature error of an altimeter', () => {
  const cells = table.rows.flatMap(({ temperature_c, error_ft, formula_ft }) =>
    table.height_ft.map((height, i) => [temperature_c, height, error_ft[i]!, formula_ft[i]!] as const),
  );

  it.each(cells)(
    'at %d °C and %d ft is the published %d ft, rounded up',
    (celsius, height, published, exact) => {
      const error = temperatureErrorFt(height, celsius);
      expect(error).toBeCloseTo(exact, 3);
      expect(Math.ceil(error / 10) * 10).toBe(published);
    },
  );

  it('is none in standard air and at the aerodrome, and the other way about in the heat', () => {
    expect(temperatureErrorFt(2000, 15)).toBe(0);
    expect(temperatureErrorFt(0, -30)).toBe(0);
    expect(temperatureErrorFt(-50, -30)).toBe(0);
    expect(temperatureErrorFt(2000, 35)).toBeLessThan(-100);
  });

  it('is that of 5,000 ft above it, as in the table', () => {
    expect(temperatureErrorFt(9000, -20)).toBe(temperatureErrorFt(5000, -20));
  });
});

// By hand: at sea level −15 °C are 30 °C too cold, at 10,000 ft the standard has −4.8 °C; density goes with one over
// the absolute temperature (gas law).
it('air that is warmer than standard is thinner, and how much warmer it is', () => {
  expect(warmerThanStandardC(0, 15)).toBeCloseTo(0, 9);
  expect(warmerThanStandardC(0, -15)).toBeCloseTo(-30, 9);
  expect(warmerThanStandardC(10_000, 0)).toBeCloseTo(4.81, 2);
  expect(trueOverIndicated(0, 30)).toBeCloseTo(Math.sqrt(318.15 / 288.15), 9);
  expect(trueOverIndicated(10_000, 10) / trueOverIndicated(10_000)).toBeCloseTo(
    Math.sqrt(278.34 / 268.34),
    4,
  );
});
