import { describe, expect, it } from 'vitest';
import {
  pressureAltitudeFt,
  temperatureErrorFt,
  trueHeightFt,
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

/** What an altimeter that is set to an aerodrome shows above it, feet, by steps of a foot through air of one lapse. */
function shownAboveFt(elevationFt: number, celsius: number, trueFt: number): number {
  const standardHpa = (ft: number) => 1013.25 * (1 - (0.0065 * (ft / 3.280839895)) / 288.15) ** 5.25588;
  let hPa = standardHpa(elevationFt);
  const fromFt = pressureAltitudeFt(hPa);
  for (let ft = 0.5; ft < trueFt; ft++) {
    const kelvin = celsius + 273.15 - 0.0065 * (ft / 3.280839895);
    // A column's weight over its gas: g / R = 0.0341632 K/m.
    hPa *= Math.exp((-0.0341632 / kelvin) * (1 / 3.280839895));
  }
  return pressureAltitudeFt(hPa) - fromFt;
}

// FAA AIM 4/3/14 TBL 7-2-3, ICAO origin (published), and the formula of ICAO Doc 8168 (second-hand).
describe('the temperature error of an altimeter', () => {
  const at = (temperatureC: number, elevationFt = 0) => ({ elevationFt, temperatureC });
  const cells = table.rows.flatMap(({ temperature_c, error_ft, formula_ft }) =>
    table.height_ft.map((height, i) => [temperature_c, height, error_ft[i]!, formula_ft[i]!] as const),
  );

  it.each(cells)(
    'at %d °C and %d ft is the published %d ft, rounded up',
    (celsius, height, published, exact) => {
      const error = temperatureErrorFt(height, at(celsius));
      expect(error).toBeCloseTo(exact, 3);
      expect(Math.ceil(error / 10) * 10).toBe(published);
    },
  );

  it('is none in standard air and at the aerodrome, and the other way about in the heat', () => {
    expect(temperatureErrorFt(2000, at(15))).toBe(0);
    expect(temperatureErrorFt(0, at(-30))).toBe(0);
    expect(temperatureErrorFt(-50, at(-30))).toBe(0);
    expect(temperatureErrorFt(2000, at(35))).toBeLessThan(-100);
  });

  // Computed: hydrostatic integration of ICAO Doc 7488's lapse from the aerodrome's pressure and temperature up, what an
  // altimeter set there shows less the true height. The formula takes the mean of a straight lapse: within 0.3 %.
  it.each([
    [9000, -2.83, 1670],
    [9000, 30, 1670],
    [5846, -24, 2000],
    [5846, 35, 3000],
    [0, -20, 1670],
    [-1240, 40, 2500],
  ])('at %d ft and %d °C is the integral over %d ft', (elevationFt, celsius, trueFt) => {
    const shownFt = shownAboveFt(elevationFt, celsius, trueFt);
    const aerodrome = at(celsius, elevationFt);
    expect(Math.abs(trueFt + temperatureErrorFt(trueFt, aerodrome) - shownFt)).toBeLessThan(0.003 * trueFt);
    expect(Math.abs(trueHeightFt(shownFt, aerodrome) - trueFt)).toBeLessThan(0.003 * trueFt);
  });

  it('is none in standard air at a high aerodrome', () => {
    expect(Math.abs(temperatureErrorFt(3000, at(15 - 0.00198 * 9000, 9000)))).toBeLessThan(1e-9);
  });

  it('is that of 5,000 ft above it, as in the table', () => {
    expect(temperatureErrorFt(9000, at(-20))).toBe(temperatureErrorFt(5000, at(-20)));
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
