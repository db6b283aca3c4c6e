import { describe, expect, it } from 'vitest';
import { buildTrack } from '../../../core/track/build-track.ts';
import { FIX_FLAG } from '../../../core/track/track.ts';
import { flyingNorth, makeLog } from './make-log.ts';

const built = (...[rows, settings]: [Parameters<typeof makeLog>[0], Parameters<typeof buildTrack>[1]?]) => {
  const outcome = buildTrack(makeLog(rows), settings);
  if (!outcome.ok) throw new Error(outcome.refusal.message);
  return outcome.value;
};
const refusal = (rows: Parameters<typeof makeLog>[0]) => {
  const outcome = buildTrack(makeLog(rows));
  return outcome.ok ? null : outcome.refusal;
};

describe('a track', () => {
  it('keeps what was logged and derives what was not, and says which', () => {
    const flown = flyingNorth(20, 100);
    const bare = built(flown);
    expect(bare.derived).toEqual({ groundspeedKt: true, trackTrueDeg: true, verticalSpeedFpm: true });
    expect(bare.groundspeedKt[10]).toBeCloseTo(100, 1);
    expect(bare.verticalSpeedFpm[10]).toBe(0);
    expect(bare.altitudeIndicatedFt).toBeNull();

    const logged = built({
      ...flown,
      values: {
        altitudeGeometricFt: Array(20).fill(1503.3),
        altitudeIndicatedFt: Array(20).fill(1480),
        groundspeedKt: flown.timeS.map((_, i) => (i === 5 ? NaN : 97)),
        verticalSpeedFpm: Array(20).fill(-50),
        airspeedIndicatedKt: Array(20).fill(91),
      },
    });
    expect(logged.derived).toEqual({ groundspeedKt: false, trackTrueDeg: true, verticalSpeedFpm: false });
    expect(logged.groundspeedKt[4]).toBe(97);
    expect(logged.groundspeedKt[5]).toBeCloseTo(100, 1);
    expect(logged.verticalSpeedFpm[5]).toBe(-50);
    expect(logged.altitudeFt[5]).toBe(1503.3);
    expect(logged.altitudeIndicatedFt![5]).toBe(1480);
    expect(logged.recorded.airspeedIndicatedKt![5]).toBe(91);
  });

  it('cuts every column to the rows that stay', () => {
    const rows = {
      timeS: [1, 2, 2, 3],
      latDeg: [1.00001, 1.00102, 1.5, 1.00203],
      lonDeg: [5, 5, 6, 5],
      values: { altitudeGeometricFt: [11, 12, 99, 13], bankDeg: [1, 2, 99, 3] },
    };
    const track = built(rows);
    expect([...track.timeS]).toEqual([1, 2, 3]);
    expect([...track.latDeg]).toEqual([1.00001, 1.00102, 1.00203]);
    expect([...track.altitudeFt]).toEqual([11, 12, 13]);
    expect([...track.recorded.bankDeg!]).toEqual([1, 2, 3]);
    expect([...track.line]).toEqual([2, 3, 5]);
    expect(track.issues[0]).toMatchObject({ code: 'time-repeated', firstLine: 4 });
  });

  it('marks gaps and counts them in one note', () => {
    const rows = flyingNorth(20, 100);
    for (let i = 8; i < 20; i++) rows.timeS[i]! += 30;
    const one = built(rows);
    expect(one.gaps).toEqual([{ beforeIndex: 7, startS: 1_000_000_007, endS: 1_000_000_038 }]);
    expect([...one.flags].flatMap((f, i) => (f & FIX_FLAG.gapBefore ? [i] : []))).toEqual([8]);
    expect(one.issues[0]).toMatchObject({ code: 'gap', count: 1, firstLine: 10 });
    expect(one.issues[0]!.message).toContain('a gap of 31 s');
    for (let i = 12; i < 20; i++) rows.timeS[i]! += 10;
    expect(built(rows).issues[0]!.message).toContain('2 gaps, 42 s in all');
  });
});

describe('the height for the beam', () => {
  const flown = flyingNorth(5, 100);
  const fill = (value: number) => flown.timeS.map(() => value);

  it('is the geometric one even where an altimeter was logged', () => {
    const values = { altitudeIndicatedFt: fill(1111.1), altitudeGeometricFt: fill(1222.2) };
    expect(built({ ...flown, values })).toMatchObject({ altitudeSource: 'geometric' });
  });

  it('is the height above the ellipsoid less the geoid: at the threshold if known, else as logged', () => {
    const values = { altitudeEllipsoidFt: fill(1000), geoidHeightM: fill(-30.48) };
    const logged = built({ ...flown, values });
    expect(logged.altitudeSource).toBe('ellipsoid-less-geoid');
    expect(logged.altitudeFt[0]).toBeCloseTo(1100, 9);
    expect(built({ ...flown, values }, { undulationM: 15.24 }).altitudeFt[0]).toBeCloseTo(950, 9);
  });

  it('is not the ellipsoid height when nothing tells the geoid', () => {
    const values = { altitudeEllipsoidFt: fill(1000), altitudeIndicatedFt: fill(1111.1) };
    expect(built({ ...flown, values })).toMatchObject({ altitudeSource: 'indicated' });
    expect(refusal({ ...flown, values: { altitudeEllipsoidFt: fill(1000) } })!.code).toBe('no-altitude');
  });

  it.each([
    ['altitudeIndicatedFt', 'indicated'],
    ['altitudePressureFt', 'pressure'],
    ['altitudeTransponderFt', 'transponder'],
  ] as const)('is %s only for want of better, with a warning', (quantity, source) => {
    const track = built({ ...flown, values: { [quantity]: fill(1111.1) } });
    expect(track.altitudeSource).toBe(source);
    expect(track.issues).toMatchObject([{ code: `altitude-${source}`, severity: 'warning' }]);
  });

  it('is pressure altitude with its setting as an indicated one, and that decides what the pilot flies by', () => {
    const values = { altitudePressureFt: fill(1420.38) };
    const track = built({ ...flown, values }, { undulationM: null, altimeterSettingHpa: 980 });
    expect(track.altitudeSource).toBe('indicated');
    // 920.38 ft for 980 hPa: computed, ICAO Doc 7488 (second-hand).
    expect(track.altitudeFt[0]).toBeCloseTo(500, 1);
    expect(track.altitudeIndicatedFt![0]).toBeCloseTo(500, 1);
    expect(track.issues.map(({ code }) => code)).toEqual([
      'altitude-indicated',
      'altitude-indicated-derived',
    ]);
    const beside = { ...values, altitudeGeometricFt: fill(520) };
    const both = built({ ...flown, values: beside }, { undulationM: null, altimeterSettingHpa: 980 });
    expect(both).toMatchObject({ altitudeSource: 'geometric' });
    expect(both.altitudeIndicatedFt![0]).toBeCloseTo(500, 1);
  });

  it('of an altimeter is corrected for the air that is stated, and the altimeter is not', () => {
    const values = { altitudeIndicatedFt: fill(2500) };
    const aerodrome = { elevationFt: 500, temperatureC: -30 };
    const cold = built({ ...flown, values }, { undulationM: null, aerodrome });
    // The altimeter shows 2,000 ft above an aerodrome at 500 ft and −30 °C: by integration over the height (ICAO Doc 7488's
    // lapse) 1,694 ft are true.
    expect(cold.altitudeFt[0]! - 500).toBeGreaterThan(1689);
    expect(cold.altitudeFt[0]! - 500).toBeLessThan(1699);
    expect(cold.altitudeIndicatedFt![0]).toBe(2500);
    expect(cold.issues).toMatchObject([{ code: 'altitude-indicated-corrected', severity: 'caution' }]);
    // A height by satellite needs none.
    const beside = built(
      { ...flown, values: { ...values, altitudeGeometricFt: fill(2130) } },
      { undulationM: null, aerodrome },
    );
    expect(beside.altitudeFt[0]).toBe(2130);
  });

  it('is an altitude of no named kind before an altimeter, and never an empty column', () => {
    const values = { altitudeUnnamedFt: fill(1222.2), altitudeIndicatedFt: fill(1111.1) };
    expect(built({ ...flown, values })).toMatchObject({ altitudeSource: 'unnamed', issues: [] });
    const empty = { ...values, altitudeGeometricFt: fill(NaN) };
    expect(built({ ...flown, values: empty })).toMatchObject({ altitudeSource: 'unnamed' });
    expect(refusal({ ...flown, values: { altitudeGeometricFt: fill(NaN) } })!.code).toBe('no-altitude');
  });
});

describe('a log that makes no track', () => {
  it('is one with one usable fix or none', () => {
    expect(refusal({ timeS: [1, 1], latDeg: [5, 6], lonDeg: [5, 6] })).toMatchObject({
      code: 'too-few-fixes',
    });
    expect(refusal({ timeS: [], latDeg: [], lonDeg: [] })).toMatchObject({ code: 'too-few-fixes' });
  });

  it('is one that never moves', () => {
    const still = refusal({ timeS: [1, 2, 3], latDeg: [5, 5, 5], lonDeg: [6, 6, 6] })!;
    expect(still).toMatchObject({ code: 'no-movement', severity: 'refusal', firstLine: 2 });
    expect(still.message).toContain('all 3 fixes stand at one position (5, 6)');
  });
});
