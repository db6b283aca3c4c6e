import { describe, expect, it } from 'vitest';
import { altimeter, NO_LAG, PANEL, TRANSPONDER } from './altimeter-error.ts';
import {
  indicatedAltitudeFt,
  pressureAltitudeFt,
  STANDARD_ATMOSPHERE,
  trueOverIndicated,
} from './atmosphere.ts';
import { AUGMENTED, gnssErrors, NO_ERROR, PHONE, PLAIN, standardDeviationsM } from './gnss-error.ts';
import { seededRandom, wander } from './random.ts';

function draw(seed: string): number[] {
  const random = seededRandom(seed);
  return [random.uniform(), random.gaussian(), random.gaussian(), random.uniform()];
}

function deviation(values: readonly number[]): number {
  const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
  return Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / values.length);
}

describe('seeded chance', () => {
  it('gives the same numbers for the same seed and others for another', () => {
    expect(draw('plover')).toEqual(draw('plover'));
    expect(draw('plover')).not.toEqual(draw('plovers'));
  });

  it('is normal: mean 0, deviation 1, one in twenty beyond 1.96', () => {
    const random = seededRandom('normal');
    const values = Array.from({ length: 40_000 }, () => random.gaussian());
    expect(Math.abs(values.reduce((sum, v) => sum + v, 0) / values.length)).toBeLessThan(0.02);
    expect(Math.abs(deviation(values) - 1)).toBeLessThan(0.02);
    expect(Math.abs(values.filter((v) => Math.abs(v) > 1.96).length / values.length - 0.05)).toBeLessThan(
      0.005,
    );
  });

  it('keeps a fork apart: drawing more from one does not move the other', () => {
    const once = seededRandom('a').fork('wind').uniform();
    const random = seededRandom('a');
    random.uniform();
    expect(random.fork('wind').uniform()).toBe(once);
  });

  it('wanders with its deviation and forgets in its time', () => {
    const noise = wander(seededRandom('wander'), 5, 10);
    const values = Array.from({ length: 100_000 }, () => noise.step(1));
    expect(Math.abs(deviation(values) - 5)).toBeLessThan(0.3);
    const lagged = values.slice(10).reduce((sum, v, i) => sum + v * values[i]!, 0) / values.length / 25;
    expect(Math.abs(lagged - Math.exp(-1))).toBeLessThan(0.06);
  });
});

describe('the receiver', () => {
  it.each([
    ['augmented', AUGMENTED],
    ['plain', PLAIN],
    ['phone', PHONE],
  ])('%s holds its published radius and height in 95 of 100 errors', (_, kind) => {
    // Each trial is another receiver, so that the slow part is drawn anew.
    const trials = Array.from({ length: 4000 }, (__, i) => gnssErrors(kind, seededRandom(`trial-${i}`))(0.1));
    const within = trials.filter((e) => Math.hypot(e.eastM, e.northM) <= kind.horizontal95M).length;
    const high = trials.filter((e) => Math.abs(e.upM) <= kind.vertical95M).length;
    expect(Math.abs(within / trials.length - 0.95)).toBeLessThan(0.01);
    expect(Math.abs(high / trials.length - 0.95)).toBeLessThan(0.01);
    expect(Math.abs(deviation(trials.map((e) => e.upM)) / standardDeviationsM(kind).upM - 1)).toBeLessThan(
      0.04,
    );
  });

  it('changes little from one fix to the next', () => {
    const errors = gnssErrors(PLAIN, seededRandom('slow'));
    const up = Array.from({ length: 2000 }, () => errors(1).upM);
    const steps = up.slice(1).map((v, i) => v - up[i]!);
    expect(deviation(steps)).toBeLessThan(0.8);
    expect(deviation(steps)).toBeGreaterThan(0.4);
  });

  it('switched off, is exactly nothing', () => {
    const error = gnssErrors(NO_ERROR, seededRandom('off'))(1);
    expect(Math.abs(error.eastM) + Math.abs(error.northM) + Math.abs(error.upM)).toBe(0);
  });
});

describe('the altimeter', () => {
  it('shows the height itself in standard air', () => {
    expect(indicatedAltitudeFt(STANDARD_ATMOSPHERE, 1234.5)).toBeCloseTo(1234.5, 9);
    expect(pressureAltitudeFt(STANDARD_ATMOSPHERE, 1234.5)).toBeCloseTo(1234.5, 9);
  });

  it('reads up to 150 ft too high at 1,500 ft when it is −10 °C at a sea-level aerodrome', () => {
    // FAA AIM table 7-2-3 (published): −10 °C, 1,500 ft: 150 ft, which is its formula rounded up to 10 ft.
    const cold = { ...STANDARD_ATMOSPHERE, isaDeviationC: -25 };
    const tooHighFt = indicatedAltitudeFt(cold, 1500) - 1500;
    expect(tooHighFt).toBeGreaterThan(140);
    expect(tooHighFt).toBeLessThanOrEqual(150);
  });

  it('is right at the station whatever the temperature, and off by a wrong setting', () => {
    const air = { ...STANDARD_ATMOSPHERE, isaDeviationC: -30, stationElevationFt: 500, settingErrorFt: 27 };
    expect(indicatedAltitudeFt(air, 500)).toBeCloseTo(527, 9);
  });

  it('shows a higher pressure altitude when the pressure is low', () => {
    // 1003.25 hPa stands 274.20 ft above 1013.25 hPa (ISA, computed).
    const low = { ...STANDARD_ATMOSPHERE, altimeterSettingHpa: 1003.25 };
    expect(Math.abs(pressureAltitudeFt(low, 0) - 274.2)).toBeLessThan(1.2);
  });

  it('lags by its time constant and rounds to its step', () => {
    const shown = altimeter({ lagS: 1, stepFt: 0 });
    expect(shown(1000, 0.1)).toBe(1000);
    expect(shown(1100, 1)).toBeCloseTo(1000 + 100 * (1 - Math.exp(-1)), 9);
    expect(altimeter(TRANSPONDER)(1012, 0.1)).toBe(1000);
    expect(altimeter(TRANSPONDER)(1013, 0.1)).toBe(1025);
    expect(altimeter(PANEL)(1012.4, 0.1)).toBe(1012);
    const exact = altimeter(NO_LAG);
    expect([exact(1000.25, 0.1), exact(1003.5, 0.1)]).toEqual([1000.25, 1003.5]);
  });

  it('needs 9 to 10 % more true airspeed at 5,800 ft in standard air', () => {
    // Density ratio 0.8417 at 5,800 ft (ISA, computed): 1/√0.8417 = 1.090.
    expect(trueOverIndicated(STANDARD_ATMOSPHERE, 5800)).toBeCloseTo(1.09, 3);
  });
});
