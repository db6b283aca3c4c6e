import type { Leg } from './cockpit.ts';
import { after, airborne, onTheGround, slowerThan, aboveIndicated } from './moments.ts';
import { rate, visualPath } from './sinking.ts';
import { centreline, heading } from './steering.ts';

/** From minimums to the runway by sight, with the flare. */
export function visualLanding(airspeedKt = 65): Leg {
  return {
    name: 'landing',
    lateral: centreline(),
    vertical: visualPath(),
    airspeedKt,
    flapDeg: 30,
    until: onTheGround,
  };
}

/** Brakes to a walk, leaves the runway to the given side and stops. */
export function rollOutAndExit(side: 'left' | 'right' = 'right'): readonly Leg[] {
  return [
    { name: 'roll-out', lateral: centreline(), vertical: rate(0), airspeedKt: 10, until: slowerThan(18) },
    {
      name: 'exit',
      lateral: heading(side === 'right' ? 75 : -75),
      vertical: rate(0),
      airspeedKt: 13,
      until: after(25),
    },
    {
      name: 'stop',
      lateral: heading(side === 'right' ? 75 : -75),
      vertical: rate(0),
      airspeedKt: 0,
      until: after(20),
    },
  ];
}

/** Rolls for some seconds, then power up and away, straight ahead to an altitude. */
export function touchAndGo(rollS: number, climbToFt: number): readonly Leg[] {
  return [
    {
      name: 'touch',
      lateral: centreline(),
      vertical: rate(0),
      airspeedKt: 45,
      flapDeg: 10,
      until: after(rollS),
    },
    {
      name: 'take-off roll',
      lateral: centreline(),
      vertical: rate(700),
      airspeedKt: 75,
      flapDeg: 10,
      until: airborne,
    },
    {
      name: 'climb-out',
      lateral: centreline(),
      vertical: rate(700),
      airspeedKt: 80,
      until: aboveIndicated(climbToFt),
    },
  ];
}
