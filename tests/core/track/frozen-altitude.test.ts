import { describe, expect, it } from 'vitest';
import { buildTrack } from '../../../core/track/build-track.ts';
import { flyingNorth, makeLog } from './make-log.ts';

type Column = (s: number) => number;

/** A flight at 90 kt, a fix a second, whose heights are drawn by the second. */
function track(values: Record<string, Column>, { untilS = 120, knots = 90, settingHpa = NaN } = {}) {
  const flown = flyingNorth(untilS + 1, knots);
  const columns = Object.fromEntries(
    Object.entries(values).map(([name, column]) => [name, flown.timeS.map((_, s) => column(s))]),
  );
  const built = buildTrack(makeLog({ ...flown, values: columns }), {
    undulationM: null,
    altimeterSettingHpa: Number.isNaN(settingHpa) ? null : settingHpa,
  });
  if (!built.ok) throw new Error(built.refusal.message);
  return built.value;
}
const isStuck = (...[values, settings]: Parameters<typeof track>) =>
  track(values, settings).issues.some(({ code }) => code === 'altitude-frozen');
/** 500 ft/min down from 2,000 ft, in uneven feet. */
const sinking: Column = (s) => 2000.3 - (500 / 60) * s;
const stuck: Column = () => 1700;

describe('an indicated altitude that is stuck', () => {
  it('is told, and counts as not recorded', () => {
    const found = track({ altitudeGeometricFt: sinking, altitudeIndicatedFt: stuck });
    expect(found.altitudeIndicatedFt).toBeNull();
    expect(found.issues).toMatchObject([
      {
        code: 'altitude-frozen',
        severity: 'warning',
        count: 121,
        firstLine: 2,
        message:
          'The indicated altitude stands at 1,700 ft for 120 s, while the altitude above sea level (GNSS) changes ' +
          'by 892 ft: it is stuck, and counts as not recorded throughout.',
      },
    ]);
  });

  it('is one that stays the same to the foot for 60 s, from whenever on', () => {
    const from = (startS: number, endS: number) => ({
      altitudeGeometricFt: sinking,
      altitudeIndicatedFt: (s: number) => (s < startS || s > endS ? sinking(s) : 1500),
    });
    expect(isStuck(from(20, 80))).toBe(true);
    expect(isStuck(from(20, 79))).toBe(false);
    expect(isStuck(from(60, 120))).toBe(true);
    expect(isStuck({ ...from(60, 120), altitudeIndicatedFt: (s) => 1700 + 0.4 * (s % 2) })).toBe(true);
    expect(isStuck({ ...from(60, 120), altitudeIndicatedFt: (s) => 1700 + (s % 2) })).toBe(false);
  });

  it('is one that stands while another height changes by 300 ft', () => {
    // The outermost tenth of the values does not count.
    const by =
      (ft: number): Column =>
      (s) =>
        2000.3 - (ft / 118) * (s - 1);
    expect(isStuck({ altitudeGeometricFt: by(340), altitudeIndicatedFt: stuck })).toBe(true);
    expect(isStuck({ altitudeGeometricFt: by(325), altitudeIndicatedFt: stuck })).toBe(false);
    expect(isStuck({ altitudeGeometricFt: () => 1702, altitudeIndicatedFt: stuck })).toBe(false);
    for (const other of ['altitudePressureFt', 'altitudeTransponderFt', 'altitudeUnnamedFt'])
      expect(isStuck({ [other]: sinking, altitudeIndicatedFt: stuck })).toBe(true);
    // A cabin's height says nothing of an altimeter's.
    expect(isStuck({ altitudeCabinFt: sinking, altitudeIndicatedFt: stuck })).toBe(false);
  });

  it('is none in an hour of level flight, over which the weather moves one height against the other', () => {
    const drifting: Column = (s) => 5000.3 + (400 / 3600) * s;
    expect(isStuck({ altitudeGeometricFt: drifting, altitudeIndicatedFt: stuck }, { untilS: 3600 })).toBe(
      false,
    );
  });

  it('is none beside a few wrong heights, or none', () => {
    for (const until of [50, 52, 54]) {
      const wrong: Column = (s) => (s >= 50 && s <= until ? 9000 : 1702.3);
      expect(isStuck({ altitudeGeometricFt: wrong, altitudeIndicatedFt: stuck })).toBe(false);
    }
    expect(isStuck({ altitudeGeometricFt: () => NaN, altitudeIndicatedFt: stuck })).toBe(false);
    expect(isStuck({ altitudeIndicatedFt: stuck })).toBe(false);
  });

  it('is none of a parked aircraft, whose receiver wakes', () => {
    const parked = { altitudeGeometricFt: sinking, altitudeIndicatedFt: () => 36 };
    expect(isStuck(parked, { knots: 0.1 })).toBe(false);
    expect(isStuck(parked, { knots: 20 })).toBe(false);
    expect(isStuck(parked, { knots: 45 })).toBe(true);
  });

  it('is seen through values that are missing, unless for a minute', () => {
    const holed =
      (fromS: number, toS: number): Column =>
      (s) =>
        s > fromS && s < toS ? NaN : 1700;
    expect(isStuck({ altitudeGeometricFt: sinking, altitudeIndicatedFt: holed(30, 90) })).toBe(true);
    expect(isStuck({ altitudeGeometricFt: sinking, altitudeIndicatedFt: holed(30, 91) })).toBe(false);
    expect(isStuck({ altitudeGeometricFt: sinking, altitudeIndicatedFt: holed(-1, 40) })).toBe(true);
  });

  it('is one too that was worked out from a pressure altitude that is', () => {
    const found = track({ altitudeGeometricFt: sinking, altitudePressureFt: stuck }, { settingHpa: 1000 });
    expect(found.altitudeIndicatedFt).toBeNull();
    expect(found.issues.map(({ code }) => code)).toEqual(['altitude-frozen']);
  });

  it('gives way to a pressure altitude with a setting, where there is one', () => {
    const logged = { altitudeGeometricFt: sinking, altitudePressureFt: sinking, altitudeIndicatedFt: stuck };
    const found = track(logged, { settingHpa: 1003.25 });
    // 10 hPa less than standard: 274.2 ft lower (ICAO Doc 7488; as in atmosphere.test.ts).
    expect(found.altitudeIndicatedFt![60]).toBeCloseTo(sinking(60) - 274.2, 1);
    expect(found.issues.map(({ code }) => code)).toContain('altitude-frozen');
  });

  it('leaves the glidepath to the height that moves', () => {
    const found = track({ altitudePressureFt: sinking, altitudeIndicatedFt: stuck });
    expect(found.altitudeSource).toBe('pressure');
    expect(found.issues.map(({ code }) => code)).toEqual(['altitude-pressure', 'altitude-frozen']);
  });
});
