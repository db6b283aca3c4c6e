import { beforeAll, describe, expect, it } from 'vitest';
import {
  straightInLanding,
  touchAndGoThenLanding,
  circling,
  missedTurning,
} from '../scenarios/approaches.ts';
import { overflight } from '../scenarios/no-approaches.ts';
import { withSeed } from '../scenarios/scene.ts';
import { CHOUGHFELL } from '../samples/choughfell.ts';
import { PETRELHOLM } from '../samples/petrelholm.ts';
import { windFrom } from '../samples/weather.ts';
import { TRAINER } from './aircraft.ts';
import { earthCentred } from './ellipsoid.ts';
import type { FlightTruth } from './flight-truth.ts';
import { fly } from './fly.ts';
import { CHASER } from './skills.ts';

const still = { surface: { fromTrueDeg: 20, speedKt: 10 }, at2000Ft: { fromTrueDeg: 60, speedKt: 25 } };
const smooth = { ...still, gustKt: 0, verticalGustFpm: 0 };

/** Changes from one tenth of a second to the next, while in the air at both. */
function changesPerS({ columns }: FlightTruth, values: Float64Array): number[] {
  return Array.from(values.subarray(1), (value, i) => (value - values[i]!) * 10).filter(
    (_, i) => columns.onGround[i] === 0 && columns.onGround[i + 1] === 0,
  );
}

const largest = (values: readonly number[]): number =>
  values.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
const inTheAir = ({ columns }: FlightTruth, values: Float64Array): number[] =>
  [...values].filter((_, i) => columns.onGround[i] === 0);

describe('a flight', () => {
  let flights: FlightTruth[];
  beforeAll(() => {
    flights = [
      fly(touchAndGoThenLanding(PETRELHOLM, { wind: smooth, skill: CHASER })),
      fly(circling(PETRELHOLM, { wind: smooth })),
      fly(missedTurning(CHOUGHFELL, { wind: smooth, skill: CHASER })),
    ];
  });

  it('never banks, rolls, climbs, sinks, pitches or changes speed beyond its limits', () => {
    for (const flight of flights) {
      const { columns } = flight;
      expect(largest([...columns.bankDeg])).toBeLessThanOrEqual(TRAINER.bankDeg);
      expect(largest(changesPerS(flight, columns.bankDeg))).toBeLessThanOrEqual(
        TRAINER.rollRateDegPerS + 1e-6,
      );
      expect(Math.max(...columns.verticalSpeedFpm)).toBeLessThanOrEqual(TRAINER.climbFpm);
      expect(Math.min(...columns.verticalSpeedFpm)).toBeGreaterThanOrEqual(-TRAINER.sinkFpm);
      expect(largest(changesPerS(flight, columns.verticalSpeedFpm))).toBeLessThanOrEqual(
        TRAINER.pitchRateFpmPerS + 1e-6,
      );
      const speedChanges = changesPerS(flight, columns.airspeedIndicatedKt);
      expect(Math.max(...speedChanges)).toBeLessThanOrEqual(TRAINER.accelerationKtPerS + 1e-6);
      expect(Math.min(...speedChanges)).toBeGreaterThanOrEqual(-TRAINER.decelerationKtPerS - 1e-6);
    }
  });

  it('uses its bank: turns by the bank that it has, as a coordinated turn does', () => {
    for (const { columns } of flights) {
      for (let i = 1; i < columns.timeS.length; i += 7) {
        if (columns.onGround[i] === 1 || columns.onGround[i - 1] === 1) continue;
        const turn = ((columns.headingTrueDeg[i]! - columns.headingTrueDeg[i - 1]! + 540) % 360) - 180;
        const bank = (((columns.bankDeg[i]! + columns.bankDeg[i - 1]!) / 2) * Math.PI) / 180;
        const metresPerS = columns.airspeedTrueKt[i]! * 0.514444;
        const expected = ((9.80665 * Math.tan(bank)) / metresPerS / 10) * (180 / Math.PI);
        expect(Math.abs(turn - expected)).toBeLessThan(0.01);
      }
    }
  });

  it('moves over the ground as airspeed and wind together say', () => {
    for (const { columns } of flights) {
      for (let i = 1; i < columns.timeS.length; i++) {
        // The wheels still had a say in the step that ended with lift-off.
        if (columns.onGround[i] === 1 || columns.onGround[i - 1] === 1) continue;
        const heading = (columns.headingTrueDeg[i]! * Math.PI) / 180;
        const east = columns.airspeedTrueKt[i]! * Math.sin(heading) + columns.windEastKt[i]!;
        const north = columns.airspeedTrueKt[i]! * Math.cos(heading) + columns.windNorthKt[i]!;
        const track = (columns.trackTrueDeg[i]! * Math.PI) / 180;
        expect(Math.abs(columns.groundspeedKt[i]! * Math.sin(track) - east)).toBeLessThan(0.01);
        expect(Math.abs(columns.groundspeedKt[i]! * Math.cos(track) - north)).toBeLessThan(0.01);
      }
    }
  });

  it('covers the ground and the height that its speeds add up to', () => {
    for (const { columns } of flights) {
      let flownM = 0;
      let movedM = 0;
      let climbedFt = 0;
      for (let i = 1; i < columns.timeS.length; i++) {
        const point = (k: number): readonly number[] =>
          earthCentred({
            latDeg: columns.latDeg[k]!,
            lonDeg: columns.lonDeg[k]!,
            heightM: columns.heightFt[k]! * 0.3048,
          });
        const [a, b] = [point(i - 1), point(i)];
        const upM = (columns.heightFt[i]! - columns.heightFt[i - 1]!) * 0.3048;
        movedM += Math.sqrt(
          Math.max(0, Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!, a[2]! - b[2]!) ** 2 - upM ** 2),
        );
        flownM += ((columns.groundspeedKt[i]! + columns.groundspeedKt[i - 1]!) / 2) * 0.0514444;
        climbedFt += (columns.verticalSpeedFpm[i]! + columns.verticalSpeedFpm[i - 1]!) / 1200;
      }
      expect(Math.abs(flownM / movedM - 1)).toBeLessThan(2e-4);
      const grewFt = columns.heightFt.at(-1)! - columns.heightFt[0]!;
      expect(Math.abs(climbedFt - grewFt)).toBeLessThan(15);
    }
  });

  it('counts time in whole tenths from its start', () => {
    const { columns, plan } = flights[0]!;
    const beginS = Date.parse(plan.startUtc) / 1000;
    columns.timeS.forEach((timeS, i) => expect(timeS).toBe(beginS + i / 10));
  });

  it('stands on the runway at its surface plus the antenna, and nowhere else is on the ground', () => {
    const { columns, beam } = fly(straightInLanding(CHOUGHFELL));
    for (let i = 0; i < columns.timeS.length; i++) {
      if (columns.onGround[i] === 0) continue;
      const along = Math.min(1, Math.max(0, (-beam.distanceToThresholdNm[i]! * 6076.1155) / 9000));
      expect(columns.heightFt[i]!).toBeCloseTo(5812 + 34 * along + 6, 1);
    }
    expect(columns.onGround[0]).toBe(0);
    expect(columns.onGround.at(-1)).toBe(1);
    expect(columns.groundspeedKt.at(-1)).toBeLessThan(1);
  });

  it('touches down gently, on the runway, after the threshold', () => {
    const { columns, beam, facts } = fly(straightInLanding(PETRELHOLM));
    const i = columns.onGround.indexOf(1);
    expect(facts.touchdownsS).toEqual([columns.timeS[i]]);
    expect(columns.verticalSpeedFpm[i - 1]!).toBeLessThan(-20);
    expect(columns.verticalSpeedFpm[i - 1]!).toBeGreaterThan(-250);
    expect(Math.abs(beam.centrelineOffsetFt[i]!)).toBeLessThan(30);
    expect(-beam.distanceToThresholdNm[i]! * 6076.1).toBeGreaterThan(300);
    expect(-beam.distanceToThresholdNm[i]! * 6076.1).toBeLessThan(3000);
  });

  it('is the same flight for the same name, and another for another seed', () => {
    const plan = straightInLanding(PETRELHOLM);
    const once = fly(plan);
    expect(fly(plan)).toEqual(once);
    expect(fly(withSeed(plan, 2)).columns.heightFt).not.toEqual(once.columns.heightFt);
  });

  it('is shaken by gusts of the size that was asked for', () => {
    const { columns } = fly(overflight(PETRELHOLM, { wind: windFrom(0, 0, 'rough') }));
    const mean = columns.windEastKt.reduce((sum, v) => sum + v, 0) / columns.windEastKt.length;
    const sd = Math.sqrt(
      columns.windEastKt.reduce((sum, v) => sum + (v - mean) ** 2, 0) / columns.windEastKt.length,
    );
    expect(sd).toBeGreaterThan(1.8);
    expect(sd).toBeLessThan(3.4);
  });

  it('refuses a plan with a leg that never ends', () => {
    const plan = overflight(PETRELHOLM);
    const endless = { ...plan, legs: plan.legs.map((leg) => Object.assign({}, leg, { until: () => false })) };
    expect(() => fly(endless)).toThrow('leg "across" of "overflight" never ends');
  });

  it('speeds up in thin air: the same airspeed is 9 % more over the ground at 5,800 ft', () => {
    const high = fly(straightInLanding(CHOUGHFELL, { wind: { ...smooth, at2000Ft: still.surface } }));
    const ratios = inTheAir(high, high.columns.airspeedTrueKt).map(
      (v, i) => v / high.columns.airspeedIndicatedKt[i]!,
    );
    expect(Math.min(...ratios)).toBeGreaterThan(1.08);
    expect(Math.max(...ratios)).toBeLessThan(1.14);
  });
});
