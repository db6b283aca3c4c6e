import type { Leg } from '../flight/cockpit.ts';
import type { FacilityFile } from '../flight/facility-file.ts';
import type { FlightPlan } from '../flight/flight-plan.ts';
import { rollOutAndExit, touchAndGo, visualLanding } from '../flight/landing.ts';
import { after, closerThan } from '../flight/moments.ts';
import { level } from '../flight/sinking.ts';
import { heading, localizer } from '../flight/steering.ts';
import { breakOff, circleToOtherEnd, goAround, lowPass, sidestep } from './endings.ts';
import { levelToGlidepath, onTheBeam } from './final.ts';
import { interceptLeg, join, roundAgain, type Join } from './joining.ts';
import { scene, type SceneSettings } from './scene.ts';

/** The heights that every approach to a facility is flown by. */
function heightsOf(facility: FacilityFile): {
  join: Join;
  fixFt: number;
  minimumsFt: number;
  fieldFt: number;
} {
  const fixFt = facility.finalApproachFix.altitudeFt;
  return {
    fixFt,
    minimumsFt: facility.minimums.decisionAltitudeFt,
    fieldFt: facility.airportElevationFt,
    join: { from: 'left', angleDeg: 30, atNm: facility.finalApproachFix.distanceNm + 3, altitudeFt: fixFt },
  };
}

/** A plain approach down to minimums, then the ending given. */
function approach(
  name: string,
  facility: FacilityFile,
  ending: readonly Leg[],
  outcomes: FlightPlan['outcomes'],
  settings: SceneSettings = {},
  toFt = heightsOf(facility).minimumsFt,
): FlightPlan {
  const { start, legs } = join(heightsOf(facility).join);
  const down = [levelToGlidepath(heightsOf(facility).fixFt), onTheBeam(toFt)];
  return scene(name, facility, { start, legs: [...legs, ...down, ...ending] }, outcomes, settings);
}

type Scenario = (facility: FacilityFile, settings?: SceneSettings) => FlightPlan;

export const straightInLanding: Scenario = (facility, settings) =>
  approach('straight-in', facility, [visualLanding(), ...rollOutAndExit()], ['landed'], settings);

export const missedStraightAhead: Scenario = (facility, settings) =>
  approach(
    'missed-straight-ahead',
    facility,
    goAround(facility.airportElevationFt + 2000),
    ['missed-approach'],
    settings,
  );

export const missedTurning: Scenario = (facility, settings) => {
  const fieldFt = facility.airportElevationFt;
  const ending = goAround(fieldFt + 2000, { atFt: fieldFt + 450, byDeg: -130 });
  return approach('missed-turning', facility, ending, ['missed-approach'], settings);
};

export const lowApproach: Scenario = (facility, settings) => {
  const ending = lowPass(facility, 100, facility.airportElevationFt + 2000);
  return approach('low-approach', facility, ending, ['low-approach'], settings);
};

export const touchAndGoOnce: Scenario = (facility, settings) => {
  const ending = [visualLanding(), ...touchAndGo(6, facility.airportElevationFt + 1500)];
  return approach('touch-and-go', facility, ending, ['touch-and-go'], settings);
};

export const circling: Scenario = (facility, settings) => {
  const circlingFt = facility.airportElevationFt + 600;
  const ending = circleToOtherEnd(facility, circlingFt);
  return approach('circling', facility, ending, ['circled'], settings, circlingFt);
};

/** Circling altitude held along the course to the runway, high above the glidepath by then, and only there round. */
export const circlingFromNearBy: Scenario = (facility, settings) => {
  const circlingFt = facility.airportElevationFt + 600;
  const along: Leg = {
    name: 'along the course at circling altitude',
    lateral: localizer(),
    vertical: level(circlingFt),
    airspeedKt: 90,
    until: closerThan(0.8),
  };
  const ending = [along, ...circleToOtherEnd(facility, circlingFt)];
  return approach('circling-near-by', facility, ending, ['circled'], settings, circlingFt);
};

export const sidestepping: Scenario = (facility, settings) => {
  const ending = sidestep(facility, 1500);
  const fromFt = facility.airportElevationFt + 850;
  return approach('sidestep', facility, ending, ['sidestepped'], settings, fromFt);
};

export const brokenOff: Scenario = (facility, settings) => {
  const turnFt = facility.airportElevationFt + 1150;
  return approach('broken-off', facility, breakOff(turnFt), ['broken-off'], settings, turnFt);
};

export const endsOnFinal: Scenario = (facility, settings) =>
  approach('ends-on-final', facility, [], ['incomplete'], settings, facility.airportElevationFt + 700);

/** On the localizer and through the glidepath without ever sinking, then away: settled, and no approach. */
export const levelThroughGlidepath: Scenario = (facility, settings) => {
  const { join: how, fixFt } = heightsOf(facility);
  const { start, legs } = join(how);
  const through: Leg = {
    name: 'level through the glidepath',
    lateral: localizer(),
    vertical: level(fixFt),
    airspeedKt: 95,
    until: closerThan(2),
  };
  return scene('level-through', facility, { start, legs: [...legs, through, ...breakOff(fixFt)] }, [], {
    ungraded: ['localizer-pass'],
    ...settings,
  });
};

/** Two approaches in one log: a touch-and-go, round, and a full stop. */
export const touchAndGoThenLanding: Scenario = (facility, settings) =>
  practice('two-approaches', facility, 1, settings);

/** Three: round twice. */
export const threeInOneLog: Scenario = (facility, settings) =>
  practice('three-approaches', facility, 2, settings);

/** So many touch-and-goes, and a full stop. */
function practice(name: string, facility: FacilityFile, times: number, settings?: SceneSettings): FlightPlan {
  const { join: how, fixFt, minimumsFt, fieldFt } = heightsOf(facility);
  const { start, legs } = join(how);
  const down = (): Leg[] => [levelToGlidepath(fixFt), onTheBeam(minimumsFt), visualLanding()];
  const round = (): Leg[] => [...touchAndGo(6, fieldFt + 700), ...roundAgain(how, how.atNm + 0.5)];
  const rounds = Array.from({ length: times }, () => [...down(), ...round()]).flat();
  const flown = [...legs, ...rounds, ...down(), ...rollOutAndExit()];
  const outcomes: FlightPlan['outcomes'] = [...Array<'touch-and-go'>(times).fill('touch-and-go'), 'landed'];
  return scene(name, facility, { start, legs: flown }, outcomes, settings);
}

/** Inbound once, round a one-minute hold outside the fix in place of a procedure turn, inbound again and down. */
export const holdThenLanding: Scenario = (facility, settings) => {
  const { join: how, fixFt, minimumsFt } = heightsOf(facility);
  const outside = { ...how, atNm: how.atNm + 3 };
  const { start, legs } = join(outside);
  const common = { vertical: level(fixFt), airspeedKt: 95, bankLimitDeg: 25 };
  const hold: Leg[] = [
    { ...common, name: 'inbound to the hold', lateral: localizer(), until: closerThan(how.atNm - 0.8) },
    { ...common, name: 'turn outbound', lateral: heading(178, 'right'), until: after(62) },
    { ...common, name: 'outbound', lateral: heading(170), until: after(62) },
    { ...common, name: 'turn inbound', lateral: heading(-25, 'right'), until: after(52) },
    interceptLeg({ ...how, from: 'right' }),
  ];
  const down = [levelToGlidepath(fixFt), onTheBeam(minimumsFt), visualLanding(), ...rollOutAndExit()];
  return scene('hold', facility, { start, legs: [...legs, ...hold, ...down] }, ['landed'], {
    ungraded: ['localizer-pass'],
    ...settings,
  });
};
