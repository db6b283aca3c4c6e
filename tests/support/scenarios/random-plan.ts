import type { FacilityFile } from '../flight/facility-file.ts';
import type { FlightPlan } from '../flight/flight-plan.ts';
import { rollOutAndExit, touchAndGo, visualLanding } from '../flight/landing.ts';
import { seededRandom, type Random } from '../flight/random.ts';
import { CHASER, DRIFTER, STUDENT, TIDY } from '../flight/skills.ts';
import { CHOUGHFELL } from '../samples/choughfell.ts';
import { PETRELHOLM } from '../samples/petrelholm.ts';
import { airAt } from '../samples/weather.ts';
import { WHIMBRELNESS } from '../samples/whimbrelness.ts';
import { breakOff, circleToOtherEnd, goAround, lowPass, sidestep } from './endings.ts';
import { levelToGlidepath, onTheBeam } from './final.ts';
import { join } from './joining.ts';
import { scene, type SceneSettings } from './scene.ts';

const AERODROMES = [PETRELHOLM, CHOUGHFELL, WHIMBRELNESS];
const PILOTS = [TIDY, TIDY, STUDENT, STUDENT, CHASER, DRIFTER];

const among = <T>(random: Random, all: readonly T[]): T => all[Math.floor(random.uniform() * all.length)]!;
const between = (random: Random, low: number, high: number): number => low + (high - low) * random.uniform();

/**
 * A flight of chance: aerodrome, pilot, wind and its shear, air, speeds, the side, angle and distance of the
 * intercept, and the ending. The same number gives the same flight. Its planned outcome is what the ending is built
 * to be; a poor pilot may make something else of it.
 */
export function randomPlan(seed: number): FlightPlan {
  const random = seededRandom(`random-plan/${seed}`);
  const facility = among(random, AERODROMES);
  const { start, legs } = join({
    from: among(random, ['left', 'right'] as const),
    angleDeg: between(random, 15, 60),
    atNm: facility.finalApproachFix.distanceNm + between(random, -0.8, 5),
    altitudeFt: facility.finalApproachFix.altitudeFt,
    airspeedKt: between(random, 90, 120),
    turnAtFullScale: between(random, -0.2, 0.8),
    runNm: between(random, 2.5, 4),
  });
  const ending = randomEnding(facility, random);
  const down = [
    levelToGlidepath(
      facility.finalApproachFix.altitudeFt,
      between(random, -0.3, 0.6),
      between(random, 85, 115),
    ),
    onTheBeam(ending.fromFt, { airspeedKt: between(random, 75, 105), flapDeg: among(random, [0, 10, 20]) }),
  ];
  const flown = [...legs, ...down, ...ending.legs];
  const settings = randomDay(facility, random);
  return scene(`random-${seed}`, facility, { start, legs: flown }, [ending.outcome], settings);
}

type Ending = Pick<FlightPlan, 'legs'> & { outcome: FlightPlan['outcomes'][number]; fromFt: number };

function randomEnding(facility: FacilityFile, random: Random): Ending {
  const fieldFt = facility.airportElevationFt;
  const fromFt = facility.minimums.decisionAltitudeFt;
  const turn = { atFt: fieldFt + between(random, 400, 900), byDeg: among(random, [-130, -90, 90, 130]) };
  const circlingFt = fieldFt + between(random, 550, 700);
  // By the altimeter, and sinking on while it turns: in warm air that is a hundred feet less above the touchdown zone.
  const turnFt = fieldFt + between(random, 1150, 1300);
  const exit = rollOutAndExit(among(random, ['left', 'right'] as const));
  const endings: readonly Ending[] = [
    { outcome: 'landed', fromFt, legs: [visualLanding(between(random, 60, 72)), ...exit] },
    {
      outcome: 'touch-and-go',
      fromFt,
      legs: [visualLanding(), ...touchAndGo(between(random, 4, 10), fieldFt + 1500)],
    },
    { outcome: 'missed-approach', fromFt, legs: goAround(fieldFt + 2000) },
    {
      outcome: 'missed-approach',
      fromFt: fromFt + between(random, 0, 400),
      legs: goAround(fieldFt + 2000, turn),
    },
    { outcome: 'low-approach', fromFt, legs: lowPass(facility, between(random, 80, 130), fieldFt + 2000) },
    { outcome: 'circled', fromFt: circlingFt, legs: circleToOtherEnd(facility, circlingFt) },
    { outcome: 'sidestepped', fromFt: fieldFt + between(random, 800, 900), legs: sidestep(facility, 1500) },
    { outcome: 'broken-off', fromFt: turnFt, legs: breakOff(turnFt) },
    { outcome: 'incomplete', fromFt: fieldFt + between(random, 400, 1000), legs: [] },
  ];
  return among(random, endings);
}

/** Up to 16 kt at the ground from anywhere but strongly behind, half as much again or more aloft, and bumps to match. */
function randomDay(facility: FacilityFile, random: Random): SceneSettings {
  const ahead = facility.localizer.courseMagneticDeg + facility.magneticVariationDeg;
  const fromTrueDeg = ahead + between(random, -100, 100);
  const speedKt = between(random, 0, 16);
  const unrest = random.uniform();
  return {
    skill: among(random, PILOTS),
    air: airAt(facility, between(random, -20, 20), between(random, 990, 1035)),
    wind: {
      surface: { fromTrueDeg, speedKt },
      at2000Ft: {
        fromTrueDeg: fromTrueDeg + between(random, -40, 60),
        speedKt: speedKt * between(random, 1, 2) + between(random, 0, 5),
      },
      gustKt: 0.3 + 2 * unrest,
      verticalGustFpm: 10 + 80 * unrest,
    },
  };
}
