import { wrap180 } from '../../../core/units/units.ts';
import type { Lateral } from '../flight/cockpit.ts';
import { after, belowIndicated, either } from '../flight/moments.ts';
import { heading, localizer, track } from '../flight/steering.ts';
import { beamTo, gentle, HUNTER } from './parts.ts';
import { among, between, type Mistaken, type PracticeFlight } from './practice-flight.ts';

/** Turns only when the course has been crossed. */
export const lateOnLocalizer: Mistaken = (flight, random) => ({
  ...flight,
  join: {
    ...flight.join,
    atNm: flight.facility.finalApproachFix.distanceNm + between(random, 2.5, 5),
    angleDeg: between(random, 30, 50),
    turnAtFullScale: between(random, -0.75, -0.4),
  },
});

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
export const correctionsTooLarge: Mistaken = (flight, random) => ({
  ...flight,
  lower: [
    beamTo(flight.minimumsFt + 500, {
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

/** Lets the needle go for 20 s and more before anything is done, and then does the right thing. */
export const correctionsTooLate: Mistaken = (flight, random) => ({
  ...flight,
  lower: [
    beamTo(flight.fieldFt + 1080, {
      lateral: inCuts({
        fromFullScale: 0.25,
        toFullScale: 0.1,
        cutDeg: 7,
        strayDeg: 6,
        waitS: between(random, 25, 33),
      }),
    }),
    beamTo(flight.minimumsFt, gentle(5)),
  ],
});

/** The same wind, or its mirror image, so that it comes from a side of the course: 1 right, −1 left. */
function upwindOf({ facility }: PracticeFlight, fromTrueDeg: number, side: number): number {
  const ahead = facility.localizer.courseMagneticDeg + facility.magneticVariationDeg;
  return ahead + side * Math.abs(wrap180(fromTrueDeg - ahead));
}

/** Settles beside the course, where the wind comes from, and stays there. */
export const correctionsTooFew: Mistaken = (flight, random) => {
  const aim = (flight.join.from === 'left' ? -1 : 1) * between(random, 0.54, 0.6);
  const beside = { lateral: localizer(aim) };
  const { surface, at2000Ft } = flight.wind;
  const turned = (fromTrueDeg: number) => upwindOf(flight, fromTrueDeg, Math.sign(aim));
  const [level] = flight.level;
  return {
    ...flight,
    wind: {
      ...flight.wind,
      surface: { ...surface, fromTrueDeg: turned(surface.fromTrueDeg) },
      at2000Ft: { ...at2000Ft, fromTrueDeg: turned(at2000Ft.fromTrueDeg) },
    },
    level: [
      { ...level!, until: after(75) },
      { ...level!, ...beside },
    ],
    lower: [beamTo(flight.fieldFt + 1100, beside), beamTo(flight.minimumsFt, gentle(3.5))],
  };
};

/** Steers the course and lets the wind have its way, coming back by a little only when far out. */
export const drifting: Mistaken = (flight, random) => {
  const side = among(random, [-1, 1]);
  const { courseMagneticDeg } = flight.facility.localizer;
  const fromTrueDeg =
    courseMagneticDeg + flight.facility.magneticVariationDeg + side * between(random, 60, 90);
  const speedKt = between(random, 11, 15);
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
    lower: [beamTo(flight.minimumsFt, gentle(4))],
  };
};

/** Too much, too late and every time, down to where the beam is narrow; a little beside it to begin with. */
export const huntingLocalizer: Mistaken = (flight, random) => ({
  ...flight,
  lower: [
    beamTo(flight.minimumsFt + 200, {
      skill: { ...HUNTER, cutDegPerScale: between(random, 350, 450), largestCutDeg: 22 },
    }),
    beamTo(flight.minimumsFt),
  ],
});
