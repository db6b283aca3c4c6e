import type { Leg } from '../flight/cockpit.ts';
import type { FacilityFile } from '../flight/facility-file.ts';
import { rollOutAndExit } from '../flight/landing.ts';
import {
  aboveIndicated,
  after,
  belowIndicated,
  closerThan,
  either,
  leftOf,
  onTheGround,
} from '../flight/moments.ts';
import { level, rate, visualPath } from '../flight/sinking.ts';
import { centreline, heading, track } from '../flight/steering.ts';
import { parallelFacility, reciprocalFacility } from './other-runways.ts';

/** Power up, nose up, and away: straight ahead, or turning once so many feet have been climbed to. */
export function goAround(
  climbToFt: number,
  turn?: { readonly atFt: number; readonly byDeg: number },
): readonly Leg[] {
  const up = { vertical: rate(750), airspeedKt: 80, flapDeg: 10 };
  const first: Leg = {
    ...up,
    name: 'going around',
    lateral: track(0),
    goAround: true,
    until: aboveIndicated(turn?.atFt ?? climbToFt),
  };
  const turning: Leg[] = turn
    ? [
        {
          ...up,
          name: 'turning climb',
          lateral: heading(turn.byDeg, turn.byDeg < 0 ? 'left' : 'right'),
          until: aboveIndicated(climbToFt),
        },
      ]
    : [];
  const away: Leg = {
    name: 'level after the missed approach',
    lateral: heading(turn?.byDeg ?? 0),
    vertical: level(climbToFt),
    airspeedKt: 95,
    until: after(60),
  };
  return [first, ...turning, away];
}

/**
 * Levels so many feet above the aerodrome, flies along the runway and climbs away. Below 60 ft a program may take level
 * flight over the runway for a roll.
 */
export function lowPass(facility: FacilityFile, aboveFieldFt: number, climbToFt: number): readonly Leg[] {
  const passFt = facility.airportElevationFt + aboveFieldFt;
  const slow = { lateral: centreline(), airspeedKt: 75, flapDeg: 20 };
  const climb = {
    name: 'climbing away',
    lateral: track(0),
    vertical: rate(750),
    airspeedKt: 80,
    flapDeg: 10,
  };
  return [
    { ...slow, name: 'by sight to the runway', vertical: visualPath(), until: belowIndicated(passFt + 30) },
    { ...slow, name: 'along the runway', vertical: level(passFt), goAround: true, until: closerThan(-0.5) },
    { ...climb, until: aboveIndicated(climbToFt) },
  ];
}

/** Right of the runway at circling height, past its end, and left round to land the other way. */
export function circleToOtherEnd(facility: FacilityFile, circlingFt: number): readonly Leg[] {
  const low = { vertical: level(circlingFt), airspeedKt: 85, flapDeg: 10, bankLimitDeg: 25 };
  const guide = reciprocalFacility(facility);
  return [
    { ...low, name: 'breaking to circle', lateral: heading(45), until: after(30) },
    { ...low, name: 'beside the runway', lateral: centreline(5500), until: closerThan(-2.1) },
    { ...low, name: 'base', lateral: heading(-90, 'left'), until: (c) => c.now.centrelineOffsetFt < 2200 },
    {
      name: 'final the other way',
      guide,
      lateral: centreline(0, 45),
      vertical: visualPath(),
      airspeedKt: 70,
      flapDeg: 30,
      bankLimitDeg: 28,
      until: onTheGround,
    },
    ...rollOutAndExit('left').map((leg) => Object.assign({}, leg, { guide })),
  ];
}

/** By sight across to the runway beside, and down on it. */
export function sidestep(facility: FacilityFile, rightFt: number): readonly Leg[] {
  const guide = parallelFacility(facility, rightFt);
  return [
    {
      name: 'stepping aside',
      guide,
      lateral: centreline(0, 15),
      vertical: visualPath(),
      airspeedKt: 70,
      flapDeg: 30,
      bankLimitDeg: 20,
      until: onTheGround,
    },
    ...rollOutAndExit('right').map((leg) => Object.assign({}, leg, { guide })),
  ];
}

/** Told to turn away: level, off to the right, and gone. */
export function breakOff(altitudeFt: number): readonly Leg[] {
  return [
    {
      name: 'turning away',
      lateral: heading(110, 'right'),
      vertical: level(altitudeFt),
      airspeedKt: 100,
      bankLimitDeg: 25,
      until: either(after(120), leftOf(-4)),
    },
  ];
}
