import { FEET_PER_NM } from '../../../core/units/units.ts';
import type { Leg, PilotSkill } from '../flight/cockpit.ts';
import type { FlightPlan } from '../flight/flight-plan.ts';
import { after, fartherThan, leftOf, rightOf } from '../flight/moments.ts';
import { level } from '../flight/sinking.ts';
import { heading, track } from '../flight/steering.ts';

export interface Join {
  /** The side of the course that the aircraft comes from. */
  readonly from: 'left' | 'right';
  readonly angleDeg: number;
  /** Where its line meets the extended centreline. */
  readonly atNm: number;
  readonly altitudeFt: number;
  readonly airspeedKt?: number;
  /** Needle at which the pilot turns: 0.5 is in good time, −0.3 is 0.3 of full scale too far on the other side. */
  readonly turnAtFullScale?: number;
  /** How far before the course the log begins. */
  readonly runNm?: number;
  readonly skill?: Partial<PilotSkill>;
}

/** Vectors to the localizer: a start on the line and the leg up to the turn. */
export function join(how: Join): { start: FlightPlan['start']; legs: readonly Leg[] } {
  const side = how.from === 'left' ? 1 : -1;
  const runNm = how.runNm ?? 3;
  const angle = (how.angleDeg * Math.PI) / 180;
  const airspeedKt = how.airspeedKt ?? 100;
  return {
    start: {
      distanceNm: how.atNm + runNm * Math.cos(angle),
      offsetFt: -side * runNm * Math.sin(angle) * FEET_PER_NM,
      indicatedFt: how.altitudeFt,
      rightOfCourseDeg: side * how.angleDeg,
      airspeedKt,
    },
    legs: [interceptLeg(how)],
  };
}

/** The leg of a vector alone, for a second approach in the same flight. */
export function interceptLeg(how: Join): Leg {
  const turnAt = how.turnAtFullScale ?? 0.5;
  return {
    name: 'vector to the localizer',
    lateral: track(how.from === 'left' ? how.angleDeg : -how.angleDeg),
    vertical: level(how.altitudeFt),
    airspeedKt: how.airspeedKt ?? 100,
    bankLimitDeg: 20,
    ...(how.skill && { skill: how.skill }),
    until: how.from === 'left' ? rightOf(-turnAt) : leftOf(turnAt),
  };
}

/** From a climb-out round to the localizer again: crosswind, downwind, base, and the vector of the next approach. */
export function roundAgain(how: Join, downwindToNm: number): readonly Leg[] {
  const side = how.from === 'left' ? -1 : 1;
  const turn = how.from;
  const common = {
    vertical: level(how.altitudeFt, 700),
    airspeedKt: how.airspeedKt ?? 100,
    bankLimitDeg: 25,
  };
  return [
    { ...common, name: 'crosswind', lateral: heading(side * 90, turn), until: after(75) },
    { ...common, name: 'downwind', lateral: track(180, turn), until: fartherThan(downwindToNm) },
    { ...common, name: 'base', lateral: heading(-side * 90, turn), until: after(22) },
    interceptLeg(how),
  ];
}
