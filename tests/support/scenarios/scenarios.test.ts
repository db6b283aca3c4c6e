import { describe, expect, it } from 'vitest';
import type { FacilityFile } from '../flight/facility-file.ts';
import type { FlightPlan } from '../flight/flight-plan.ts';
import type { FlightTruth } from '../flight/flight-truth.ts';
import { fly } from '../flight/fly.ts';
import { CHOUGHFELL } from '../samples/choughfell.ts';
import { PETRELHOLM } from '../samples/petrelholm.ts';
import { WHIMBRELNESS } from '../samples/whimbrelness.ts';
import * as approaches from './approaches.ts';
import * as none from './no-approaches.ts';

/** Values of a column where the aircraft is inbound between two distances from the threshold. */
function between(flight: FlightTruth, values: Float64Array, fromNm: number, toNm: number): number[] {
  const { distanceToThresholdNm } = flight.beam;
  return [...values].filter(
    (_, i) => distanceToThresholdNm[i]! <= fromNm && distanceToThresholdNm[i]! >= toNm,
  );
}

function trackOffCourseDeg(flight: FlightTruth, i: number): number {
  const course = flight.plan.facility.localizer.courseMagneticDeg + flight.plan.facility.magneticVariationDeg;
  return Math.abs(((flight.columns.trackTrueDeg[i]! - course + 540) % 360) - 180);
}

/** Tenths of a second on course, farther out than two miles and a little. */
function timeOnCourse(plan: FlightPlan): number {
  const flight = fly(plan);
  return [...flight.beam.localizerFullScale].filter(
    (v, i) =>
      Math.abs(v) < 0.5 && trackOffCourseDeg(flight, i) < 10 && flight.beam.distanceToThresholdNm[i]! > 2.2,
  ).length;
}

const indexAt = (flight: FlightTruth, timeS: number): number => flight.columns.timeS.indexOf(timeS);
const largest = (values: readonly number[]): number => Math.max(...values.map(Math.abs));
const offsetsOnGround = ({ columns, beam }: FlightTruth): number[] =>
  [...beam.centrelineOffsetFt].filter((_, i) => columns.onGround[i] === 1);

describe.each([PETRELHOLM, CHOUGHFELL, WHIMBRELNESS])('at $name', (facility: FacilityFile) => {
  const minimumsFt = facility.minimums.decisionAltitudeFt;

  it('a tidy straight-in stays within a third of both needles from the fix to minimums', () => {
    const flight = fly(approaches.straightInLanding(facility));
    const { distanceNm } = facility.finalApproachFix;
    expect(largest(between(flight, flight.beam.localizerFullScale, distanceNm, 1))).toBeLessThan(0.34);
    expect(largest(between(flight, flight.beam.glidepathFullScale, distanceNm - 0.7, 1))).toBeLessThan(0.34);
    expect(flight.facts.touchdownsS).toHaveLength(1);
    expect(flight.facts.liftOffsS).toEqual([]);
  });

  it.each([approaches.missedStraightAhead, approaches.missedTurning])(
    'a missed approach starts at minimums, sinks on a little, and climbs away untouched',
    (scenario) => {
      const { facts, columns } = fly(scenario(facility));
      const [goAround] = facts.goArounds;
      const decided = columns.timeS.indexOf(goAround!.decidedS);
      expect(Math.abs(columns.indicatedFt[decided]! - minimumsFt)).toBeLessThan(5);
      expect(goAround!.lowestS).toBeGreaterThan(goAround!.decidedS);
      expect(goAround!.lowestFt).toBeLessThan(minimumsFt);
      expect(goAround!.lowestFt).toBeGreaterThan(minimumsFt - 30);
      expect(facts.touchdownsS).toEqual([]);
      expect(columns.heightFt.at(-1)!).toBeGreaterThan(minimumsFt + 1000);
    },
  );

  it('a missed approach straight ahead keeps the course, and one that turns left ends left of it', () => {
    const ahead = fly(approaches.missedStraightAhead(facility)).beam;
    const turned = fly(approaches.missedTurning(facility)).beam;
    expect(Math.abs(ahead.centrelineOffsetFt.at(-1)!)).toBeLessThan(3000);
    expect(turned.centrelineOffsetFt.at(-1)!).toBeLessThan(-10_000);
    expect(Math.max(...turned.centrelineOffsetFt)).toBeLessThan(2000);
  });

  it('a low approach passes over the runway between 60 and 150 ft and never rolls', () => {
    const flight = fly(approaches.lowApproach(facility));
    const overRunway = between(flight, flight.columns.heightFt, 0, -0.5);
    expect(Math.min(...overRunway)).toBeGreaterThan(facility.airportElevationFt + 60);
    expect(Math.min(...overRunway)).toBeLessThan(facility.airportElevationFt + 150);
    expect(flight.facts.touchdownsS).toEqual([]);
    expect(flight.columns.heightFt.at(-1)!).toBeGreaterThan(facility.airportElevationFt + 1900);
  });

  it('a touch-and-go lifts off again within half a minute, faster than 40 kt all the while', () => {
    const { facts, columns } = fly(approaches.touchAndGoOnce(facility));
    expect(facts.touchdownsS).toHaveLength(1);
    expect(facts.liftOffsS[0]! - facts.touchdownsS[0]!).toBeLessThan(30);
    const rolling = [...columns.groundspeedKt].filter((_, i) => columns.onGround[i] === 1);
    expect(Math.min(...rolling)).toBeGreaterThan(40);
  });

  it('two approaches in one log end in a touch-and-go and a full stop', () => {
    const { facts, columns } = fly(approaches.touchAndGoThenLanding(facility));
    expect([facts.touchdownsS.length, facts.liftOffsS.length]).toEqual([2, 1]);
    expect(columns.onGround.at(-1)).toBe(1);
  });

  it('a circling approach leaves the localizer low and lands the other way', () => {
    const flight = fly(approaches.circling(facility));
    const down = indexAt(flight, flight.facts.touchdownsS[0]!);
    expect(trackOffCourseDeg(flight, down)).toBeGreaterThan(170);
    expect(largest(offsetsOnGround(flight).slice(0, 100))).toBeLessThan(60);
  });

  it('a sidestep lands beside, in the direction of the course', () => {
    const flight = fly(approaches.sidestepping(facility));
    const down = indexAt(flight, flight.facts.touchdownsS[0]!);
    expect(Math.abs(flight.beam.centrelineOffsetFt[down]! - 1500)).toBeLessThan(60);
    expect(trackOffCourseDeg(flight, down)).toBeLessThan(10);
  });

  it('a broken-off approach gets inside 4 NM on course and leaves without a climb', () => {
    const flight = fly(approaches.brokenOff(facility));
    const nearest = Math.min(...flight.beam.distanceToThresholdNm);
    expect(nearest).toBeLessThan(4);
    expect(nearest).toBeGreaterThan(2);
    expect(largest([flight.beam.localizerFullScale.at(-1)!])).toBeGreaterThan(2);
    const lowestFt = Math.min(...flight.columns.heightFt);
    expect(flight.columns.heightFt.at(-1)! - lowestFt).toBeLessThan(100);
  });

  it('a log that ends on final ends there: on course, in the air, 700 ft up', () => {
    const flight = fly(approaches.endsOnFinal(facility));
    expect(Math.abs(flight.beam.localizerFullScale.at(-1)!)).toBeLessThan(0.5);
    expect(flight.columns.onGround.at(-1)).toBe(0);
    expect(Math.abs(flight.columns.indicatedFt.at(-1)! - facility.airportElevationFt - 700)).toBeLessThan(10);
  });

  it('level flight goes through the glidepath from full scale below to full scale above', () => {
    const { beam } = fly(approaches.levelThroughGlidepath(facility));
    expect(Math.min(...beam.glidepathFullScale)).toBeLessThan(-1);
    expect(Math.max(...beam.glidepathFullScale)).toBeGreaterThan(1);
  });

  it('a hold turns outbound once, outside the fix, and passes the fix inbound once', () => {
    const flight = fly(approaches.holdThenLanding(facility));
    const { distanceToThresholdNm } = flight.beam;
    const fixNm = facility.finalApproachFix.distanceNm;
    const passes = [...distanceToThresholdNm].filter(
      (d, i) => i > 0 && d < fixNm && distanceToThresholdNm[i - 1]! >= fixNm,
    );
    expect(passes).toHaveLength(1);
    const outbound = [...distanceToThresholdNm].filter((_, i) => trackOffCourseDeg(flight, i) > 150);
    expect(outbound.length).toBeGreaterThan(500);
    expect(Math.min(...outbound)).toBeGreaterThan(fixNm);
  });
});

describe('a facility on the 180th meridian', () => {
  it('keeps every longitude from −180 to below 180 while the flight crosses it', () => {
    const { threshold, farEnd } = PETRELHOLM.runway;
    const runway = {
      ...PETRELHOLM.runway,
      threshold: { ...threshold, lonDeg: threshold.lonDeg - 163.55 },
      farEnd: { ...farEnd, lonDeg: farEnd.lonDeg - 163.55 },
    };
    const { columns, beam } = fly(approaches.straightInLanding({ ...PETRELHOLM, runway }));
    expect(columns.lonDeg[0]).toBeGreaterThan(179);
    expect(columns.lonDeg.at(-1)).toBeLessThan(-179);
    expect(Math.max(...columns.lonDeg)).toBeLessThan(180);
    expect(Math.min(...columns.lonDeg)).toBeGreaterThanOrEqual(-180);
    expect(Math.abs(beam.localizerFullScale[3000]!)).toBeLessThan(0.3);
  });
});

describe('what is no approach', () => {
  it.each([
    ['an overflight', none.overflight(PETRELHOLM)],
    ['straight through at 30 degrees', none.through(PETRELHOLM, 30)],
    ['straight through at 90 degrees', none.through(PETRELHOLM, 90)],
    ['a landing on the other end', none.reciprocalLanding(PETRELHOLM)],
    ['circuits with a one-mile final', none.circuits(PETRELHOLM)],
    ['a final joined at two miles', none.joinedAtTwoMiles(PETRELHOLM)],
  ])('%s is never on course outside two miles', (_, plan) => {
    expect(plan.outcomes).toEqual([]);
    expect(timeOnCourse(plan)).toBe(0);
  });

  it('straight through does cross the course, outside the fix', () => {
    for (const angleDeg of [30, 90]) {
      const { beam } = fly(none.through(PETRELHOLM, angleDeg));
      const crossing = beam.localizerFullScale.findIndex((v) => v > 0);
      expect(beam.localizerFullScale[0]).toBeLessThan(-1);
      expect(beam.localizerFullScale.at(-1)).toBeGreaterThan(1);
      expect(beam.distanceToThresholdNm[crossing]).toBeGreaterThan(PETRELHOLM.finalApproachFix.distanceNm);
    }
  });

  it.each([750, 1500])('a landing on a runway %d ft to the right rolls out there', (rightFt) => {
    const flight = fly(none.parallelLanding(PETRELHOLM, rightFt));
    const down = indexAt(flight, flight.facts.touchdownsS[0]!);
    expect(Math.abs(flight.beam.centrelineOffsetFt[down]! - rightFt)).toBeLessThan(40);
    expect(trackOffCourseDeg(flight, down)).toBeLessThan(5);
  });

  it('a landing on the other end rolls towards the localizer threshold', () => {
    const flight = fly(none.reciprocalLanding(PETRELHOLM));
    const down = indexAt(flight, flight.facts.touchdownsS[0]!);
    expect(trackOffCourseDeg(flight, down)).toBeGreaterThan(170);
    expect(Math.abs(flight.beam.centrelineOffsetFt[down]!)).toBeLessThan(40);
  });

  it('circuits land twice and lift off once', () => {
    const { facts } = fly(none.circuits(PETRELHOLM));
    expect([facts.touchdownsS.length, facts.liftOffsS.length]).toEqual([2, 1]);
  });
});
