import { wrap360 } from '../../../core/units/units.ts';
import type { Stated } from '../../../core/standard/stated.ts';
import type { Leg, PilotSkill } from '../flight/cockpit.ts';
import type { FacilityFile } from '../flight/facility-file.ts';
import type { FlightPlan } from '../flight/flight-plan.ts';
import { rollOutAndExit, visualLanding } from '../flight/landing.ts';
import type { Random } from '../flight/random.ts';
import { seededRandom } from '../flight/random.ts';
import { TIDY } from '../flight/skills.ts';
import { CHOUGHFELL } from '../samples/choughfell.ts';
import { PETRELHOLM } from '../samples/petrelholm.ts';
import { airAt } from '../samples/weather.ts';
import { WHIMBRELNESS } from '../samples/whimbrelness.ts';
import { goAround } from '../scenarios/endings.ts';
import { levelToGlidepath, onTheBeam } from '../scenarios/final.ts';
import { join, type Join } from '../scenarios/joining.ts';
import { scene } from '../scenarios/scene.ts';

const AERODROMES = [PETRELHOLM, CHOUGHFELL, WHIMBRELNESS];
export const FINAL_KT = 90;

export const among = <T>(random: Random, all: readonly T[]): T =>
  all[Math.floor(random.uniform() * all.length)]!;
export const between = (random: Random, low: number, high: number): number =>
  low + (high - low) * random.uniform();

/** An approach in parts, each of which a mistake may change. Heights are indicated. */
export interface PracticeFlight {
  readonly facility: FacilityFile;
  readonly fixFt: number;
  readonly minimumsFt: number;
  readonly fieldFt: number;
  readonly join: Join;
  /** From the localizer to the glidepath. */
  readonly level: readonly Leg[];
  /** Between the glidepath's intercept and the rest of final. */
  readonly upper: readonly Leg[];
  /** From there to minimums. */
  readonly lower: readonly Leg[];
  readonly ending: 'landed' | 'missed-approach';
  readonly landing: readonly Leg[];
  readonly missed: readonly Leg[];
  readonly skill: PilotSkill;
  readonly wind: FlightPlan['wind'];
  readonly stated: Partial<Stated>;
}

/** A change of a flight that makes a mistake of it, with some chance in how large it is. */
export type Mistaken = (flight: PracticeFlight, random: Random) => PracticeFlight;

/** A tidy pilot's approach of chance: aerodrome, wind, side, angle and distance of the intercept, and the ending. */
function tidyFlight(random: Random): PracticeFlight {
  const facility = among(random, AERODROMES);
  const fixFt = facility.finalApproachFix.altitudeFt;
  const minimumsFt = facility.minimums.decisionAltitudeFt;
  const fieldFt = facility.airportElevationFt;
  const ending = random.uniform() < 0.6 ? 'landed' : 'missed-approach';
  return {
    facility,
    fixFt,
    minimumsFt,
    fieldFt,
    join: {
      from: among(random, ['left', 'right'] as const),
      angleDeg: between(random, 20, 45),
      atNm: facility.finalApproachFix.distanceNm + between(random, 2, 5),
      altitudeFt: fixFt,
      turnAtFullScale: between(random, 0.45, 0.65),
    },
    level: [levelToGlidepath(fixFt, -0.1, 95)],
    upper: [],
    lower: [onTheBeam(minimumsFt, { airspeedKt: FINAL_KT })],
    ending,
    landing: [visualLanding(), ...rollOutAndExit(among(random, ['left', 'right'] as const))],
    missed: goAround(fieldFt + 2000),
    skill: TIDY,
    wind: windOf(facility, random),
    stated: {
      conditions: 'simulated',
      targetAirspeedKt: FINAL_KT,
      visualReferenceAtMinimums: ending === 'landed' ? 'seen' : 'not-seen',
    },
  };
}

/** Up to 14 kt at the ground, stronger and turned aloft, with bumps in which a tidy pilot stays tidy. */
function windOf(facility: FacilityFile, random: Random): FlightPlan['wind'] {
  const ahead = facility.localizer.courseMagneticDeg + facility.magneticVariationDeg;
  const fromTrueDeg = ahead + between(random, -90, 90);
  const speedKt = between(random, 0, 14);
  const unrest = random.uniform();
  return {
    surface: { fromTrueDeg, speedKt },
    at2000Ft: {
      fromTrueDeg: fromTrueDeg + between(random, -20, 40),
      speedKt: speedKt * between(random, 1, 1.8),
    },
    gustKt: 0.3 + 0.9 * unrest,
    verticalGustFpm: 10 + 35 * unrest,
  };
}

/** As the tower says it: to ten degrees and a knot. */
function reported({ surface }: FlightPlan['wind']): Stated['wind'] {
  const fromTrueDeg = wrap360(Math.round(surface.fromTrueDeg / 10) * 10);
  return { fromTrueDeg, speedKt: Math.round(surface.speedKt) };
}

/** A flight with its mistakes, and what is stated of it. */
export interface MistakenFlight {
  readonly plan: FlightPlan;
  readonly stated: Partial<Stated>;
}

/** The same name and seed give the same flight; without mistakes it is a tidy one. */
export function mistakenFlight(name: string, mistakes: readonly Mistaken[], seed: number): MistakenFlight {
  const random = seededRandom(`mistake/${name}/${seed}`);
  const flight = mistakes.reduce(
    (made, mistake, i) => mistake(made, random.fork(`${i}`)),
    tidyFlight(random),
  );
  const { start, legs } = join(flight.join);
  const end = flight.ending === 'landed' ? flight.landing : flight.missed;
  const flown = [...legs, ...flight.level, ...flight.upper, ...flight.lower, ...end];
  const plan = scene(`${name}-${seed}`, flight.facility, { start, legs: flown }, [flight.ending], {
    air: airAt(flight.facility, between(random, -15, 15), between(random, 995, 1030)),
    wind: flight.wind,
    skill: flight.skill,
  });
  return { plan, stated: { ...flight.stated, wind: reported(flight.wind) } };
}
