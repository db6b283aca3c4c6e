import { describe, expect, it } from 'vitest';
import { FULL, LEAST, withValue } from '../facility/full-facility.ts';
import descents from '../../reference/rate-of-descent.json' with { type: 'json' };
import worked from '../../reference/facility-worked-checks.json' with { type: 'json' };
import { briefed } from './asked.ts';

const DECIDED = { decisionAltitudeFt: 312 };

describe('a draft from a landing', () => {
  const draft = (unconfirmed: readonly string[]) => ({
    ...LEAST,
    origin: { landing: { logSha256: 'ab'.repeat(32), unconfirmed } },
  });

  it('is not briefed while any value of it is open, which is named in plain words', () => {
    expect(() => briefed(draft(['runway.threshold.latDeg', 'glidepath.angleDeg']))).toThrow(
      /nobody has confirmed these values of it: position of the threshold and glidepath angle\.$/,
    );
  });

  it('is briefed once all are confirmed', () => {
    expect(briefed(draft([])).path).toHaveLength(10);
  });
});

describe('the path on the sheet', () => {
  // FAA CIFP, KJFK ILS 04R: a crossing altitude of 65 ft, 3°, 4.5 NM: 1,515.8 ft with the curve of the earth (computed);
  // 1,500 ft charted (published), to which the flat 1,498 belongs.
  it('is at the published check of 4.5 NM, and stands beside the charted altitude', () => {
    const { expected } = worked.rows.find(({ id }) => id === 'kjfk-04r-glidepath-at-pfaf')!;
    const check = expected as { curved_ft: number; published_altitude_ft: number };
    const at = withValue(withValue(LEAST, 'runway.threshold.elevationFt', 10), 'finalApproachFix', {
      distanceNm: 4.5,
      altitudeFt: check.published_altitude_ft,
      dmeNm: 6.1,
    });
    const { fix } = briefed(at);
    // The check curves the earth from the threshold on; the beam rises from 1,049 ft before it, 4.67 NM away: 1.4 ft more.
    expect(Math.abs(fix.altitudeFt - 1.4 - check.curved_ft)).toBeLessThan(0.1);
    expect(fix.pathAboveFt).toBeCloseTo(fix.altitudeFt - 1500, 9);
    expect(fix).toMatchObject({ isAssumed: false, dmeNm: 6.1, publishedAltitudeFt: 1500 });
  });

  it('is told at each mile from 10 to 1, the fix among them', () => {
    const { path, fix } = briefed(withValue(FULL, 'finalApproachFix.distanceNm', 5));
    expect(path.map(({ distanceNm }) => distanceNm)).toEqual([10, 9, 8, 7, 6, 5, 4, 3, 2, 1]);
    expect(path[5]!.altitudeFt).toBe(fix.altitudeFt);
    expect(path.every(({ altimeterFt }) => altimeterFt === null)).toBe(true);
  });

  // The height of the altimeter's source is the airport's 130 ft. FAA AIM TBL 7-2-3 (published): at −20 °C 140 ft for
  // 1,000 ft above it, 280 ft for 2,000 ft.
  it('has beside it what the altimeter shows in that air', () => {
    const { path } = briefed(FULL, { temperatureC: -20 });
    const [ten, three] = [path[0]!, path[7]!];
    expect(three.altitudeFt).toBeGreaterThan(1050);
    expect(three.altitudeFt).toBeLessThan(1130);
    expect(three.altimeterFt! - three.altitudeFt).toBeGreaterThan(125);
    expect(three.altimeterFt! - three.altitudeFt).toBeLessThan(140);
    expect(ten.altimeterFt! - ten.altitudeFt).toBeGreaterThan(420);
  });

  it('assumes a fix where none has a distance, and says so', () => {
    const { fix } = briefed(LEAST);
    expect(fix).toMatchObject({ isAssumed: true, name: null, publishedAltitudeFt: null, pathAboveFt: null });
    expect(fix.altitudeFt).toBeCloseTo(1600, 0);
  });
});

describe('the course', () => {
  it('is as given, with the variation that turns it', () => {
    const { course } = briefed(FULL);
    expect(course).toEqual({ trueDeg: 71.025, magneticDeg: 82, magneticFrom: 'given', variationDeg: -11 });
  });

  it('is turned by the assigned variation, or by the model’s, which is said', () => {
    const plain = withValue(FULL, 'localizer.courseMagneticDeg', undefined);
    expect(briefed(plain).course).toMatchObject({ magneticDeg: 82.025, magneticFrom: 'variation' });
    const { course } = briefed(withValue(plain, 'magneticVariationDeg', undefined));
    expect(course.magneticFrom).toBe('model');
    expect(course.magneticDeg).toBeCloseTo(71.025 - course.variationDeg!, 9);
  });
});

describe('decision altitude', () => {
  it('is none unless it was typed, though the facility has one; what follows from it is open', () => {
    const { decision, descents: rows, needles } = briefed(FULL);
    expect(decision).toBeNull();
    expect(rows.every(({ timeS }) => timeS === null)).toBe(true);
    expect(needles.places.some(({ isDecision }) => isDecision)).toBe(false);
  });

  // By hand: 200 ft above the touchdown zone at 112 ft; (312 − 155) ÷ 6,076 ÷ tan 3° = 0.493 NM.
  it('stands on the path where it is that high', () => {
    const { decision } = briefed(withValue(FULL, 'glidepath.antenna', undefined), DECIDED);
    expect(decision).toMatchObject({ altitudeFt: 312, aboveTouchdownZoneFt: 200 });
    expect(decision!.distanceNm).toBeCloseTo(0.493, 2);
  });

  it('is met nearer to the threshold in the cold, since the altimeter shows too much', () => {
    const cold = briefed(FULL, { ...DECIDED, temperatureC: -30 }).decision!;
    const standard = briefed(FULL, DECIDED).decision!;
    // FAA AIM TBL 7-2-3 (published): 40 ft for 200 ft at −30 °C; of 182 ft above the airport 28 ft are left to the formula
    // (computed), a tenth of a mile on 3°.
    expect(standard.distanceNm - cold.distanceNm).toBeCloseTo(0.09, 2);
  });

  it('that is another than the facility’s is to be checked', () => {
    const codes = (ft: number) => briefed(FULL, { decisionAltitudeFt: ft }).toCheck.map(({ code }) => code);
    expect(codes(312)).not.toContain('decision-altitude-not-the-facilitys');
    expect(codes(321)).toContain('decision-altitude-not-the-facilitys');
  });
});

describe('the gates', () => {
  it.each([
    ['touchdown-zone', 112],
    ['airport', 130],
    ['threshold', 100],
  ] as const)('count from the %s, on the altimeter', (gateDatum, datumFt) => {
    const { gates } = briefed(FULL, { gateDatum });
    expect(gates).toMatchObject({ datum: gateDatum, datumFt });
    expect(gates.gates.map(({ altitudeFt }) => altitudeFt)).toEqual([datumFt + 1000, datumFt + 500]);
  });

  it('count from the touchdown zone where the airport’s elevation is not known', () => {
    const { gates } = briefed(LEAST, { gateDatum: 'airport' });
    expect(gates).toMatchObject({ datum: 'touchdown-zone', datumFt: 100 });
  });
});

describe('going down', () => {
  // NOAA/FAA Rate of Descent Table (published), rounded to 5 ft/min and within 5 of the exact figure to 4°.
  it('holds the path at the sink rates of the published table', () => {
    const table = descents.rows.filter((row) => row.table === 'faa-iap' && row.angle_deg === 3);
    const rows = briefed(FULL).descents;
    expect(rows.map(({ groundspeedKt }) => groundspeedKt)).toEqual([
      60, 70, 80, 90, 100, 110, 120, 130, 140, 150, 160,
    ]);
    const both = rows.flatMap(({ groundspeedKt, rateFpm }) => {
      const published = table.find((row) => row.groundspeed_kt === groundspeedKt);
      return published ? [Math.abs(rateFpm - published.fpm!)] : [];
    });
    expect(both).toHaveLength(4);
    for (const off of both) expect(off).toBeLessThanOrEqual(4.95);
  });

  it('is told around the groundspeed given, which is marked', () => {
    const rows = briefed(FULL, { groundspeedKt: 95 }).descents;
    expect(rows.map(({ groundspeedKt }) => groundspeedKt)).toEqual([55, 65, 75, 85, 95, 105, 115, 125, 135]);
    expect(rows.filter(({ isAsked }) => isAsked).map(({ groundspeedKt }) => groundspeedKt)).toEqual([95]);
    expect(briefed(FULL, { groundspeedKt: 30 }).descents[0]!.groundspeedKt).toBe(10);
  });

  // By hand: 4.5 NM at 90 kt are three minutes.
  it('takes so long from the fix to decision altitude', () => {
    const { decision } = briefed(FULL, DECIDED);
    const at = withValue(FULL, 'finalApproachFix.distanceNm', 4.5 + decision!.distanceNm);
    const { descents: rows } = briefed(at, { ...DECIDED, groundspeedKt: 90 });
    expect(rows.find(({ isAsked }) => isAsked)!.timeS).toBeCloseTo(180, 6);
    expect(rows.find(({ groundspeedKt }) => groundspeedKt === 60)!.timeS).toBeCloseTo(270, 6);
  });
});

describe('the wind', () => {
  const wind = { fromTrueDeg: 116, speedKt: 20 };

  // By hand: 45° off a course of 071: 14.1 kt ahead and from the right; at 90 kt true 9° of correction, 88.9 − 14.1 kt.
  it('tells the heading and the groundspeed at an airspeed', () => {
    const { wind: told } = briefed(FULL, { wind, airspeedKt: 90 });
    expect(told!.headwindKt).toBeCloseTo(14.1, 1);
    expect(told!.crosswindFromRightKt).toBeCloseTo(14.1, 1);
    // 90 kt indicated are 91.3 kt true at 1,000 ft in standard air: ICAO Doc 7488, density ratio 0.971 (second-hand).
    expect(told!.heading!.trueAirspeedKt).toBeCloseTo(91.3, 1);
    expect(told!.heading!.correctionDeg).toBeCloseTo(8.9, 1);
    expect(told!.heading!.groundspeedKt).toBeCloseTo(76.1, 1);
    expect(told!.heading!.magneticDeg).toBeCloseTo(90.9, 1);
    expect(told!.heading!.trueDeg).toBeCloseTo(79.9, 1);
  });

  it('asks for more true airspeed the warmer the air is', () => {
    const at = (temperatureC: number) =>
      briefed(FULL, { wind, airspeedKt: 90, temperatureC }).wind!.heading!.trueAirspeedKt;
    // Each 12 °C make 2 % (common practice, no source).
    expect(at(27) / at(15)).toBeCloseTo(1.02, 2);
  });

  it('has no heading without an airspeed, and none in a storm', () => {
    expect(briefed(FULL, { wind }).wind).toMatchObject({ airspeedKt: null, heading: null });
    const storm = { fromTrueDeg: 161, speedKt: 95 };
    expect(briefed(FULL, { wind: storm, airspeedKt: 60 }).wind).toMatchObject({
      airspeedKt: 60,
      heading: null,
    });
  });
});

describe('the needles', () => {
  // By hand: full scale is 2.225° from an antenna 9,000 ft past the threshold: at 1 NM ¼ of it is
  // (9,000 + 6,076) × tan 0.556° = 146 ft, at 5 NM (9,000 + 30,381) × the same = 382 ft.
  it('are told in feet at 5, 3 and 1 NM and at decision altitude, by quarters', () => {
    const { needles } = briefed(FULL, DECIDED);
    expect(needles.places.map(({ isDecision }) => isDecision)).toEqual([false, false, false, true]);
    expect(needles.rows.map(({ fraction }) => fraction)).toEqual([0.25, 0.5, 0.75]);
    expect(needles.rows[0]!.localizerFt[0]).toBeCloseTo(382, 0);
    expect(needles.rows[0]!.localizerFt[2]).toBeCloseTo(146, 0);
    // By hand: at 3 NM and 1,059 ft from the mast, 19,287 ft × (tan 3.35° − tan 3°) = 118 ft.
    expect(Math.abs(needles.rows[1]!.glidepathFt[1]! - 118)).toBeLessThan(1);
    expect(needles.rows[2]!.glidepathFt[3]).toBeLessThan(40);
  });

  it('have a row for the dot of a display with five', () => {
    const { needles } = briefed(FULL, { dots: 5 });
    expect(needles.rows.map(({ fraction }) => fraction)).toEqual([0.2, 0.25, 0.5, 0.75]);
    expect(needles.rows[0]!.localizerFt[0]! / needles.rows[1]!.localizerFt[0]!).toBeCloseTo(0.8, 3);
  });
});

it('what contradicts itself in the facility stands on the sheet', () => {
  const codes = briefed(withValue(FULL, 'finalApproachFix.altitudeFt', 2200)).toCheck.map(({ code }) => code);
  expect(codes).toContain('facility-fix-off-glidepath');
});
