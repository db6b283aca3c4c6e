import { FEET_PER_NM, wrap180 } from '../../../core/units/units.ts';
import { beamTruth } from '../flight/beam-truth.ts';
import type { Lateral, Leg, PilotSkill } from '../flight/cockpit.ts';
import {
  aboveGlidepath,
  after,
  belowGlidepath,
  belowIndicated,
  closerThan,
  either,
} from '../flight/moments.ts';
import { glidepath, level, rate } from '../flight/sinking.ts';
import { heading, localizer, track } from '../flight/steering.ts';
import { onTheGround } from '../flight/moments.ts';
import { rollOutAndExit, visualLanding } from '../flight/landing.ts';
import { goAround } from '../scenarios/endings.ts';
import { downFromAbove, levelToGlidepath, onTheBeam } from '../scenarios/final.ts';
import { between, FINAL_KT, among, type Mistaken, type PracticeFlight } from './practice-flight.ts';

const landed: Pick<PracticeFlight, 'ending' | 'stated'> = {
  ending: 'landed',
  stated: { conditions: 'simulated', targetAirspeedKt: FINAL_KT, visualReferenceAtMinimums: 'seen' },
};
const missed: Pick<PracticeFlight, 'ending' | 'stated'> = {
  ending: 'missed-approach',
  stated: { conditions: 'simulated', targetAirspeedKt: FINAL_KT, visualReferenceAtMinimums: 'not-seen' },
};

/** Sink that holds the path at the target speed in still air, ft/min, at these aerodromes. */
const NEEDED_FPM = 500;

/** A leg on both needles until some height, with what is wrong about it. */
function beamTo(toFt: number, wrong: Partial<Leg> = {}): Leg {
  return { ...onTheBeam(toFt, { airspeedKt: FINAL_KT }), ...wrong };
}

/** Vectored in close and kept high: above the path from the start, and down to it in a dive. */
const fromAbove: Mistaken = (flight, random) => {
  const { distanceNm, altitudeFt } = flight.facility.finalApproachFix;
  const atNm = distanceNm + between(random, 0, 0.7);
  // Settled on the localizer about so far out, and there above the path by most of its scale.
  const settledNm = atNm + 0.6;
  const slope = Math.tan((flight.facility.glidepath.angleDeg * Math.PI) / 180);
  const scaleFt = settledNm * FEET_PER_NM * 0.24 * slope;
  const highFt = (settledNm - distanceNm) * FEET_PER_NM * slope + between(random, 0.75, 1) * scaleFt;
  return {
    ...flight,
    join: { ...flight.join, atNm, altitudeFt: altitudeFt + highFt, angleDeg: between(random, 20, 30) },
    level: [
      { ...levelToGlidepath(altitudeFt + highFt), name: 'onto the localizer', until: after(14) },
      downFromAbove(between(random, 1150, 1350), between(random, -0.6, -0.4), 102),
    ],
  };
};

/** Turns only when the course has been crossed. */
const lateOnLocalizer: Mistaken = (flight, random) => ({
  ...flight,
  join: {
    ...flight.join,
    atNm: flight.facility.finalApproachFix.distanceNm + between(random, 2.5, 5),
    angleDeg: between(random, 30, 50),
    turnAtFullScale: between(random, -0.75, -0.4),
  },
});

/** Stays level through the path. */
const descendedLate: Mistaken = (flight, random) => ({
  ...flight,
  level: [levelToGlidepath(flight.fixFt, between(random, 0.6, 0.85))],
});

/** Leaves the altitude well before the path, and sinks on below it. */
const descendedEarly: Mistaken = (flight, random) => ({
  ...flight,
  level: [
    levelToGlidepath(flight.fixFt, between(random, -0.95, -0.75)),
    {
      name: 'down before the path',
      lateral: localizer(),
      vertical: rate(-NEEDED_FPM),
      airspeedKt: 92,
      until: after(between(random, 28, 38)),
    },
  ],
});

/** Sets one rate and keeps it, too small or too large for the groundspeed, until the needle is well off. */
const rateNotHeld: Mistaken = (flight, random) => {
  const tooSlow = random.uniform() < 0.5;
  const off = between(random, 0.7, 0.85);
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

/** What is done about a localizer needle: nothing until it is so far off, then so large a cut until it is so near. */
interface Cuts {
  readonly fromFullScale: number;
  readonly toFullScale: number;
  readonly cutDeg: number;
  /** Track held between the cuts, off the course, to the side given by `towards`. */
  readonly strayDeg: number;
  readonly waitS: number;
}

function inCuts({ fromFullScale, toFullScale, cutDeg, strayDeg, waitS }: Cuts): Lateral {
  return () => {
    let side = 0;
    let sinceS = 0;
    const steady = track(0)();
    return (cockpit) => {
      const needle = cockpit.now.localizerFullScale;
      if (side === 0 && Math.abs(needle) > fromFullScale) [side, sinceS] = [Math.sign(needle), cockpit.legS];
      if (side !== 0 && side * needle < toFullScale) side = 0;
      const cuts = side !== 0 && cockpit.legS - sinceS >= waitS;
      const { headingTrueDeg } = steady(cockpit);
      const windDeg = wrap180(headingTrueDeg - cockpit.beam.courseTrueDeg);
      // Into the wind where there is any: let go with it, it would be the wind's drift.
      const stray = strayDeg * (Math.abs(windDeg) > 1 ? Math.sign(windDeg) : needle >= 0 ? 1 : -1);
      return { headingTrueDeg: headingTrueDeg + (cuts ? -side * cutDeg : stray) };
    };
  };
}

/** Cuts of 15 to 22 degrees back to the course, each time. */
const correctionsTooLarge: Mistaken = (flight, random) => ({
  ...flight,
  lower: [
    beamTo(flight.minimumsFt + 350, {
      lateral: inCuts({
        fromFullScale: 0.3,
        toFullScale: 0,
        cutDeg: between(random, 16, 24),
        strayDeg: 3,
        waitS: 0,
      }),
    }),
    beamTo(flight.minimumsFt, gentle(4)),
  ],
});

/** Comes back without a large cut, where a mistake that is not about that is over. */
const gentle = (largestCutDeg: number): Partial<Leg> => ({
  skill: { cutDegPerScale: 8, largestCutDeg, learnDegPerS: 0.02 },
});

/** Lets the needle go for 20 s and more before anything is done, and then does the right thing. */
const correctionsTooLate: Mistaken = (flight, random) => ({
  ...flight,
  lower: [
    beamTo(flight.fieldFt + 1080, {
      lateral: inCuts({
        fromFullScale: 0.25,
        toFullScale: 0.1,
        cutDeg: 7,
        strayDeg: 6,
        waitS: between(random, 20, 26),
      }),
    }),
    beamTo(flight.minimumsFt, gentle(4)),
  ],
});

/** Settles beside the course and stays there. */
const correctionsTooFew: Mistaken = (flight, random) => {
  const aim = (flight.join.from === 'left' ? -1 : 1) * between(random, 0.6, 0.68);
  const beside = { lateral: localizer(aim) };
  const [level] = flight.level;
  return {
    ...flight,
    level: [
      { ...level!, until: after(75) },
      { ...level!, ...beside },
    ],
    lower: [beamTo(flight.fieldFt + 950, beside), beamTo(flight.minimumsFt, gentle(2.5))],
  };
};

/** Steers the course and lets the wind have its way, coming back by a little only when far out. */
const drifting: Mistaken = (flight, random) => {
  const side = among(random, [-1, 1]);
  const { courseMagneticDeg } = flight.facility.localizer;
  const fromTrueDeg =
    courseMagneticDeg + flight.facility.magneticVariationDeg + side * between(random, 60, 90);
  const speedKt = between(random, 9, 14);
  return {
    ...flight,
    wind: {
      ...flight.wind,
      surface: { fromTrueDeg, speedKt },
      at2000Ft: { fromTrueDeg, speedKt: speedKt * 1.3 },
    },
    upper: [
      beamTo(flight.minimumsFt + 500, {
        lateral: heading(0),
        until: either(
          belowIndicated(flight.minimumsFt + 450),
          (c) => Math.abs(c.now.localizerFullScale) > 0.8,
        ),
      }),
    ],
  };
};

const HUNTER: Partial<PilotSkill> = { lateS: 3.5, scanS: 0.5, ignoredFullScale: 0.02, planned: 1 };

/** Too much, too late and every time, down to where the beam is narrow; a little beside it to begin with. */
const huntingLocalizer: Mistaken = (flight, random) => ({
  ...flight,
  lower: [
    beamTo(flight.minimumsFt + 200, {
      skill: { ...HUNTER, cutDegPerScale: between(random, 350, 450), largestCutDeg: 22 },
    }),
    beamTo(flight.minimumsFt),
  ],
});

const huntingGlidepath: Mistaken = (flight, random) => ({
  ...flight,
  level: [levelToGlidepath(flight.fixFt, 0.15)],
  lower: [
    beamTo(flight.fieldFt + 750, {
      skill: { ...HUNTER, climbFpmPerScale: between(random, 10000, 14000), largestClimbFpm: 750 },
    }),
    beamTo(flight.minimumsFt),
  ],
});

/** Low, and back up to the path on the speed alone. */
const speedDecaying: Mistaken = (flight, random) => ({
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

const fastAtGate: Mistaken = (flight, random) => {
  const airspeedKt = FINAL_KT + between(random, 14, 20);
  return {
    ...flight,
    level: flight.level.map((leg) => ({ ...leg, airspeedKt: 100 })),
    lower: [beamTo(flight.fieldFt + 420, { airspeedKt }), beamTo(flight.minimumsFt)],
  };
};

/** High and diving through 500 ft, and on to the runway. */
const unstableAndContinued: Mistaken = (flight, random) => ({
  ...flight,
  ...landed,
  lower: [
    beamTo(flight.fieldFt + 1000),
    beamTo(flight.fieldFt + 480, {
      vertical: glidepath(among(random, [-1, 1]) * between(random, 0.95, 1.05)),
    }),
    beamTo(flight.minimumsFt),
  ],
});

/** Leaves the path downwards for the runway in sight. */
const ducked: Mistaken = (flight, random) => ({
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
const levelled: Mistaken = (flight, random) => ({
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

const missedLate: Mistaken = (flight, random) => ({
  ...flight,
  ...missed,
  lower: [beamTo(flight.minimumsFt - between(random, 55, 85))],
});

/** Decides in time, and lets the aircraft sink on. */
const missedSank: Mistaken = (flight, random) => ({
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

const missedWandered: Mistaken = (flight, random) => {
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
const longLanding: Mistaken = (flight, random) => {
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

/** Out of limits on the way, and away at once. */
const wentAroundInTime: Mistaken = (flight, random) => ({
  ...flight,
  ...missed,
  lower: [
    beamTo(flight.fieldFt + 900),
    beamTo(0, { vertical: rate(-150), until: aboveGlidepath(between(random, 0.8, 0.88)) }),
  ],
});

/** Exactly one mistake each, by the finding that it should be answered with. */
export const MISTAKES: Readonly<Record<string, Mistaken>> = {
  'unstable-and-continued': unstableAndContinued,
  'ducked-below-path': ducked,
  'missed-late': missedLate,
  'missed-sank': missedSank,
  'missed-wandered': missedWandered,
  'levelled-near-minimums': levelled,
  'from-above': fromAbove,
  'descended-late': descendedLate,
  'descended-early': descendedEarly,
  'hunting-glidepath': huntingGlidepath,
  'rate-not-held': rateNotHeld,
  'late-on-localizer': lateOnLocalizer,
  drifting,
  'hunting-localizer': huntingLocalizer,
  'corrections-too-large': correctionsTooLarge,
  'corrections-too-late': correctionsTooLate,
  'corrections-too-few': correctionsTooFew,
  'speed-decaying': speedDecaying,
  'fast-at-gate': fastAtGate,
  'long-landing': longLanding,
  'went-around-in-time': wentAroundInTime,
};
