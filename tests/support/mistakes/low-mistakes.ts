import { FEET_PER_NM } from '../../../core/units/units.ts';
import { beamTruth } from '../flight/beam-truth.ts';
import { rollOutAndExit, visualLanding } from '../flight/landing.ts';
import { aboveGlidepath, after, closerThan, onTheGround } from '../flight/moments.ts';
import { glidepath, level, rate } from '../flight/sinking.ts';
import { track } from '../flight/steering.ts';
import { goAround } from '../scenarios/endings.ts';
import { beamTo, landed, missed } from './parts.ts';
import { among, between, type Mistaken } from './practice-flight.ts';

/** High and diving through 500 ft, and on to the runway. */
export const unstableAndContinued: Mistaken = (flight, random) => ({
  ...flight,
  ...landed,
  lower: [
    beamTo(flight.fieldFt + 1000),
    beamTo(flight.fieldFt + 480, {
      vertical: glidepath(among(random, [-1, 1]) * between(random, 1.05, 1.3)),
    }),
    beamTo(flight.minimumsFt),
  ],
});

/** Leaves the path downwards for the runway in sight. */
export const ducked: Mistaken = (flight, random) => ({
  ...flight,
  ...landed,
  lower: [
    beamTo(flight.minimumsFt + 60),
    beamTo(0, {
      name: 'ducking below the path',
      vertical: rate(-between(random, 850, 1000)),
      airspeedKt: 85,
      until: (c) => c.now.heightAboveGlidepathFt < -50 || c.wheelsFt < 90,
    }),
    {
      ...visualLanding(68),
      name: 'dragging it in',
      vertical: rate(-330),
      until: (c) => c.now.heightAboveGlidepathFt > -40 || c.wheelsFt < 40,
    },
  ],
});

/** Levels where the runway should appear, and sails on above the path. */
export const levelled: Mistaken = (flight, random) => ({
  ...flight,
  ...landed,
  lower: [
    beamTo(flight.minimumsFt + between(random, 20, 60)),
    beamTo(0, {
      name: 'level at minimums',
      vertical: () => () => 0,
      airspeedKt: 85,
      until: after(between(random, 10, 12)),
    }),
  ],
});

export const missedLate: Mistaken = (flight, random) => ({
  ...flight,
  ...missed,
  lower: [beamTo(flight.minimumsFt - between(random, 55, 85))],
});

/** Decides in time, and lets the aircraft sink on. */
export const missedSank: Mistaken = (flight, random) => ({
  ...flight,
  ...missed,
  missed: [
    {
      name: 'half-hearted',
      lateral: track(0),
      vertical: rate(-170),
      airspeedKt: 80,
      flapDeg: 10,
      goAround: true,
      until: after(between(random, 18, 24)),
    },
    ...goAround(flight.fieldFt + 2000),
  ],
});

export const missedWandered: Mistaken = (flight, random) => {
  const side = among(random, [-1, 1]);
  const up = { vertical: rate(750), airspeedKt: 80, flapDeg: 10 };
  const swing = between(random, 14, 20);
  return {
    ...flight,
    ...missed,
    missed: [
      { ...up, name: 'going around', lateral: track(side * swing), goAround: true, until: after(12) },
      { ...up, name: 'the other way', lateral: track(-side * swing), until: after(14) },
      { ...up, name: 'and back', lateral: track(side * swing), until: after(14) },
      ...goAround(flight.fieldFt + 2000),
    ],
  };
};

/** Floats along the runway, past the touchdown zone. */
export const longLanding: Mistaken = (flight, random) => {
  const { runwayLengthFt } = beamTruth(flight.facility);
  const floatsToFt = Math.min(3000, runwayLengthFt / 2) + between(random, 500, 1000);
  return {
    ...flight,
    ...landed,
    landing: [
      { ...visualLanding(72), until: (c) => c.wheelsFt < 25 },
      {
        ...visualLanding(70),
        name: 'float',
        vertical: level(flight.fieldFt + 18),
        until: closerThan(-floatsToFt / FEET_PER_NM),
      },
      { ...visualLanding(60), until: onTheGround },
      ...rollOutAndExit(),
    ],
  };
};

/** Chops the power before the threshold. */
export const shortLanding: Mistaken = (flight, random) => {
  const fromFt = between(random, 80, 92);
  return {
    ...flight,
    ...landed,
    landing: [
      { ...visualLanding(65), until: (c) => c.wheelsFt < fromFt },
      { ...visualLanding(62), name: 'dropping', vertical: rate(-1000), until: (c) => c.wheelsFt < 18 },
      visualLanding(60),
      ...rollOutAndExit(),
    ],
  };
};

/** Out of limits on the way, and away at once. */
export const wentAroundInTime: Mistaken = (flight, random) => ({
  ...flight,
  ...missed,
  lower: [
    beamTo(flight.fieldFt + 900),
    beamTo(0, { vertical: rate(-320), until: aboveGlidepath(between(random, 0.85, 0.95)) }),
  ],
});

/** Lands although nothing was in sight at minimums. */
export const continuedUnseen: Mistaken = (flight) => ({
  ...flight,
  ...landed,
  stated: { ...landed.stated, visualReferenceAtMinimums: 'not-seen' },
});
