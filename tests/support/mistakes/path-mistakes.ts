import type { Leg } from '../flight/cockpit.ts';
import { FEET_PER_NM } from '../../../core/units/units.ts';
import { aboveGlidepath, after, belowGlidepath } from '../flight/moments.ts';
import { rate } from '../flight/sinking.ts';
import { localizer } from '../flight/steering.ts';
import { downFromAbove, levelToGlidepath } from '../scenarios/final.ts';
import { beamTo, HUNTER } from './parts.ts';
import { between, FINAL_KT, type Mistaken } from './practice-flight.ts';

/** Vectored in close and kept high: above the path from the start, and down to it in a dive. */
export const fromAbove: Mistaken = (flight, random) => {
  const { distanceNm, altitudeFt } = flight.facility.finalApproachFix;
  const atNm = distanceNm + between(random, 0, 0.7);
  // Settled on the localizer about so far out, and there above the path by most of its scale.
  const settledNm = atNm + 1;
  const slope = Math.tan((flight.facility.glidepath.angleDeg * Math.PI) / 180);
  const scaleFt = settledNm * FEET_PER_NM * 0.24 * slope;
  const highFt = (settledNm - distanceNm) * FEET_PER_NM * slope + between(random, 0.5, 0.8) * scaleFt;
  return {
    ...flight,
    join: { ...flight.join, atNm, altitudeFt: altitudeFt + highFt, angleDeg: between(random, 20, 30) },
    level: [
      {
        ...levelToGlidepath(altitudeFt + highFt),
        name: 'onto the localizer',
        until: (c) => c.legS >= 14 && c.now.glidepathFullScale > 0.7,
      },
      downFromAbove(between(random, 1150, 1350), between(random, -0.5, -0.35), 102),
    ],
  };
};

/** Stays level through the path. */
export const descendedLate: Mistaken = (flight, random) => ({
  ...flight,
  level: [levelToGlidepath(flight.fixFt, between(random, 0.75, 1))],
});

/** Leaves the altitude well before the path, and sinks on below it. */
export const descendedEarly: Mistaken = (flight, random) => ({
  ...flight,
  level: [
    levelToGlidepath(flight.fixFt, between(random, -0.95, -0.75)),
    {
      name: 'down before the path',
      lateral: localizer(),
      vertical: rate(-500),
      airspeedKt: 92,
      until: after(between(random, 28, 38)),
    },
  ],
});

/** Sets one rate and keeps it, too small or too large for the groundspeed, until the needle is well off. */
export const rateNotHeld: Mistaken = (flight, random) => {
  const tooSlow = random.uniform() < 0.5;
  const off = between(random, 0.8, 1);
  return {
    ...flight,
    upper: [
      beamTo(flight.fieldFt + (flight.fixFt - flight.fieldFt) * 0.85),
      {
        name: 'one rate',
        lateral: localizer(),
        vertical: () => (cockpit) =>
          -groundRateFpm(cockpit.groundspeedKt, cockpit.beam.glideAngleDeg) * (tooSlow ? 0.6 : 1.4),
        airspeedKt: FINAL_KT,
        flapDeg: 10,
        until: tooSlow ? aboveGlidepath(off) : belowGlidepath(-off),
      },
    ],
  };
};

function groundRateFpm(groundspeedKt: number, angleDeg: number): number {
  return groundspeedKt * 101.27 * Math.tan((angleDeg * Math.PI) / 180);
}

export const huntingGlidepath: Mistaken = (flight, random) => ({
  ...flight,
  level: [levelToGlidepath(flight.fixFt, 0.15)],
  lower: [
    beamTo(flight.fieldFt + 750, {
      skill: { ...HUNTER, climbFpmPerScale: between(random, 10000, 14000), largestClimbFpm: 1100 },
    }),
    beamTo(flight.minimumsFt),
  ],
});

/** Holds each rate until the needle is on the other side, and then the opposite one. */
export const chasedGlidepath: Mistaken = (flight, random) => {
  const swing = (fpm: number, until: Leg['until']): Leg => beamTo(0, { vertical: rate(-fpm), until });
  const off = between(random, 0.6, 0.7);
  return {
    ...flight,
    upper: [
      beamTo(flight.fieldFt + (flight.fixFt - flight.fieldFt) * 0.93),
      swing(150, aboveGlidepath(off)),
      swing(950, belowGlidepath(-off)),
      swing(150, aboveGlidepath(0.45)),
    ],
  };
};

/** Low, and back up to the path on the speed alone. */
export const speedDecaying: Mistaken = (flight, random) => ({
  ...flight,
  upper: [
    beamTo(flight.fieldFt + (flight.fixFt - flight.fieldFt) * 0.85),
    beamTo(0, { name: 'low', vertical: rate(-850), until: belowGlidepath(-0.65) }),
    beamTo(0, {
      name: 'back up on the speed',
      vertical: rate(-100),
      airspeedKt: FINAL_KT - between(random, 13, 18),
      until: aboveGlidepath(-0.05),
    }),
  ],
});

export const fastAtGate: Mistaken = (flight, random) => {
  const airspeedKt = FINAL_KT + between(random, 14, 20);
  return {
    ...flight,
    level: flight.level.map((leg) => ({ ...leg, airspeedKt: 100 })),
    lower: [beamTo(flight.fieldFt + 800, { airspeedKt }), beamTo(flight.minimumsFt)],
  };
};
