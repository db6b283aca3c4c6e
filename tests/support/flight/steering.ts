import { wrap180 } from '../../../core/units/units.ts';
import { trueOverIndicated } from './atmosphere.ts';
import type { Cockpit, Lateral } from './cockpit.ts';
import { meanWind } from './wind.ts';

const RADIANS = Math.PI / 180;

/** Holds a heading so many degrees right of the inbound course. */
export function heading(rightOfCourseDeg: number, turn?: 'left' | 'right'): Lateral {
  return () => (cockpit) => ({
    headingTrueDeg: cockpit.beam.courseTrueDeg + rightOfCourseDeg,
    turn,
  });
}

/** Holds a ground track so many degrees right of the inbound course, the wind allowed for. */
export function track(rightOfCourseDeg: number, turn?: 'left' | 'right'): Lateral {
  return () => (cockpit) => ({
    headingTrueDeg: headingForTrack(cockpit, cockpit.beam.courseTrueDeg + rightOfCourseDeg),
    turn,
  });
}

/**
 * Keeps the localizer as the pilot's skill has it: at each look a cut towards the course by the needle seen, on top of
 * a wind correction that is a guess at first and learned from standing deviations.
 */
export function localizer(aimFullScale = 0): Lateral {
  return () => {
    let nextLookS = 0;
    let learnedDeg = 0;
    let headingTrueDeg = 0;
    return (cockpit) => {
      const { skill, seen, beam } = cockpit;
      if (cockpit.legS >= nextLookS) {
        const needle = beyond(seen.localizerFullScale - aimFullScale, skill.ignoredFullScale);
        const cutDeg = bounded(needle * skill.cutDegPerScale, skill.largestCutDeg);
        learnedDeg += bounded(needle, 1) * skill.learnDegPerS * skill.scanS;
        const windDeg = wrap180(headingForTrack(cockpit, beam.courseTrueDeg) - beam.courseTrueDeg);
        headingTrueDeg = beam.courseTrueDeg + windDeg * skill.planned - learnedDeg - cutDeg;
        nextLookS = cockpit.legS + skill.scanS;
      }
      return { headingTrueDeg };
    };
  };
}

/** Flies by sight along the runway's centreline or a line beside it, in feet right of it. */
export function centreline(offsetFt = 0, steepest = 25): Lateral {
  return () => (cockpit) => {
    const offDeg = bounded((cockpit.now.centrelineOffsetFt - offsetFt) / 12, steepest);
    const wantedDeg = cockpit.beam.runwayBearingTrueDeg - offDeg;
    return { headingTrueDeg: cockpit.state.onGround ? wantedDeg : headingForTrack(cockpit, wantedDeg) };
  };
}

/** The heading that makes a track good in the mean wind at this height. */
function headingForTrack(cockpit: Cockpit, trackTrueDeg: number): number {
  const { state, wind, air } = cockpit;
  const { eastKt, northKt } = meanWind(wind, state.heightFt - cockpit.beam.thresholdElevationFt);
  const trueAirspeedKt = state.airspeedIndicatedKt * trueOverIndicated(air, state.heightFt);
  const along = trackTrueDeg * RADIANS;
  const fromLeftKt = eastKt * Math.cos(along) - northKt * Math.sin(along);
  const sine = bounded(fromLeftKt / Math.max(40, trueAirspeedKt), 0.7);
  return trackTrueDeg - Math.asin(sine) / RADIANS;
}

/** What is left of a needle beyond the share that a pilot lets pass. */
export function beyond(needle: number, ignored: number): number {
  return Math.sign(needle) * Math.max(0, Math.abs(needle) - ignored);
}

export function bounded(value: number, limit: number): number {
  return Math.max(-limit, Math.min(limit, value));
}
