import { FEET_PER_NM } from '../../../core/units/units.ts';
import type { Leg } from '../flight/cockpit.ts';
import type { FacilityFile } from '../flight/facility-file.ts';
import type { FlightPlan } from '../flight/flight-plan.ts';
import { rollOutAndExit, touchAndGo, visualLanding } from '../flight/landing.ts';
import { after, closerThan, fartherThan, onTheGround } from '../flight/moments.ts';
import { level, visualPath } from '../flight/sinking.ts';
import { centreline, heading, track } from '../flight/steering.ts';
import { levelToGlidepath, onTheBeam } from './final.ts';
import { join } from './joining.ts';
import { parallelFacility, reciprocalFacility } from './other-runways.ts';
import { scene, type SceneSettings } from './scene.ts';

type Scenario = (facility: FacilityFile, settings?: SceneSettings) => FlightPlan;

/** Across the aerodrome on the way to somewhere else. */
export const overflight: Scenario = (facility, settings) => {
  const altitudeFt = facility.airportElevationFt + 3500;
  const start = {
    distanceNm: 6,
    offsetFt: -9 * FEET_PER_NM,
    indicatedFt: altitudeFt,
    rightOfCourseDeg: 60,
    airspeedKt: 115,
  };
  const legs = [
    { name: 'across', lateral: track(60), vertical: level(altitudeFt), airspeedKt: 115, until: after(480) },
  ];
  return scene('overflight', facility, { start, legs }, [], settings);
};

/** Straight through the localizer outside the fix, at an angle. */
export const through = (facility: FacilityFile, angleDeg: number, settings?: SceneSettings): FlightPlan => {
  const altitudeFt = facility.finalApproachFix.altitudeFt;
  const { start } = join({
    from: 'left',
    angleDeg,
    atNm: facility.finalApproachFix.distanceNm + 2,
    altitudeFt,
    runNm: 4,
  });
  const legs = [
    {
      name: 'through',
      lateral: track(angleDeg),
      vertical: level(altitudeFt),
      airspeedKt: 100,
      until: after(270),
    },
  ];
  return scene(`through-at-${angleDeg}`, facility, { start, legs }, [], settings);
};

/** An approach and landing on the other end of the same runway. */
export const reciprocalLanding: Scenario = (facility, settings) => {
  const guide = reciprocalFacility(facility);
  return scene('reciprocal', facility, { ...wholeApproach(guide) }, [], { guide, ...settings });
};

/** An approach and landing on a runway so many feet to the right. */
export const parallelLanding = (
  facility: FacilityFile,
  rightFt: number,
  settings?: SceneSettings,
): FlightPlan => {
  const guide = parallelFacility(facility, rightFt);
  return scene(`parallel-${rightFt}`, facility, wholeApproach(guide), [], { guide, ...settings });
};

/** Circuits by sight with a final of one mile: touch-and-go, round, and a full stop. */
export const circuits: Scenario = (facility, settings) => {
  const { legs: first, start } = circuitFromDownwind(facility);
  const again = circuitFromDownwind(facility).legs;
  const climbFt = facility.airportElevationFt + 600;
  const legs = [
    ...first,
    ...touchAndGo(5, climbFt),
    { ...circuitLeg(facility), name: 'crosswind', lateral: heading(-90, 'left'), until: after(28) },
    ...again,
    ...rollOutAndExit('left'),
  ];
  return scene('circuits', facility, { start, legs }, [], settings);
};

function circuitLeg(facility: FacilityFile): Omit<Leg, 'name' | 'lateral' | 'until'> {
  return { vertical: level(facility.airportElevationFt + 1000), airspeedKt: 85, bankLimitDeg: 28 };
}

function circuitFromDownwind(facility: FacilityFile): { start: FlightPlan['start']; legs: readonly Leg[] } {
  const start = {
    distanceNm: -0.6,
    offsetFt: -4500,
    indicatedFt: facility.airportElevationFt + 1000,
    rightOfCourseDeg: 180,
    airspeedKt: 85,
  };
  const low = {
    vertical: level(facility.airportElevationFt + 550),
    airspeedKt: 75,
    flapDeg: 20,
    bankLimitDeg: 28,
  };
  const legs: Leg[] = [
    { ...circuitLeg(facility), name: 'downwind', lateral: track(180, 'left'), until: fartherThan(0.75) },
    { ...low, name: 'base', lateral: heading(90, 'left'), until: (c) => c.now.centrelineOffsetFt > -1500 },
    {
      name: 'short final',
      lateral: centreline(0, 45),
      vertical: visualPath(),
      airspeedKt: 65,
      flapDeg: 30,
      bankLimitDeg: 28,
      until: onTheGround,
    },
  ];
  return { start, legs };
}

/** By sight onto the centreline at two miles: joined too late to be an approach. */
export const joinedAtTwoMiles: Scenario = (facility, settings) => {
  const altitudeFt = facility.airportElevationFt + 900;
  const { start, legs } = join({
    from: 'right',
    angleDeg: 45,
    atNm: 2,
    altitudeFt,
    runNm: 3,
    turnAtFullScale: 1.2,
  });
  const down: Leg = {
    name: 'final by sight',
    lateral: centreline(0, 30),
    vertical: visualPath(),
    airspeedKt: 75,
    flapDeg: 20,
    until: closerThan(0.4),
  };
  const flown = [...legs, down, visualLanding(), ...rollOutAndExit()];
  return scene('joined-at-two-miles', facility, { start, legs: flown }, [], {
    ungraded: ['visual-final'],
    ...settings,
  });
};

function wholeApproach(guide: FacilityFile): { start: FlightPlan['start']; legs: readonly Leg[] } {
  const altitudeFt = guide.finalApproachFix.altitudeFt;
  const { start, legs } = join({
    from: 'left',
    angleDeg: 30,
    atNm: guide.finalApproachFix.distanceNm + 3,
    altitudeFt,
  });
  const minimumsFt = guide.minimums.decisionAltitudeFt;
  const down = [levelToGlidepath(altitudeFt), onTheBeam(minimumsFt), visualLanding(), ...rollOutAndExit()];
  return { start, legs: [...legs, ...down] };
}
