import { FEET_PER_NM } from '../../../core/units/units.ts';
import type { Vertical } from './cockpit.ts';
import { beyond, bounded } from './steering.ts';

/** Holds an indicated altitude, climbing or sinking to it at no more than so many feet a minute. */
export function level(altitudeFt: number, rateFpm = 600): Vertical {
  return () => (cockpit) => bounded((altitudeFt - cockpit.indicatedFt) * 8, rateFpm);
}

/** A steady climb, or a sink when negative. */
export function rate(verticalSpeedFpm: number): Vertical {
  return () => () => verticalSpeedFpm;
}

/**
 * Keeps the glidepath as the pilot's skill has it: the sink rate that the groundspeed needs, guessed at first and
 * learned from standing deviations, and at each look a correction by the needle seen.
 */
export function glidepath(aimFullScale = 0): Vertical {
  return () => {
    let nextLookS = 0;
    let learnedFpm = 0;
    let wantedFpm = 0;
    return (cockpit) => {
      const { skill, seen } = cockpit;
      if (cockpit.legS >= nextLookS) {
        const needle = beyond(seen.glidepathFullScale - aimFullScale, skill.ignoredFullScale);
        const correctionFpm = bounded(needle * skill.climbFpmPerScale, skill.largestClimbFpm);
        learnedFpm += bounded(needle, 1) * skill.learnFpmPerS * skill.scanS;
        const neededFpm = sinkAlongFpm(cockpit.groundspeedKt, cockpit.beam.glideAngleDeg);
        wantedFpm = -neededFpm * skill.planned - learnedFpm - correctionFpm;
        nextLookS = cockpit.legS + skill.scanS;
      }
      return wantedFpm;
    };
  };
}

/** Flies by sight to the touchdown zone and flares: the last 30 ft are given back gently. */
export function visualPath(angleDeg?: number): Vertical {
  return () => (cockpit) => {
    const { wheelsFt, now, groundspeedKt } = cockpit;
    if (wheelsFt < 28) return -(70 + 11 * wheelsFt);
    const steepnessDeg = angleDeg ?? cockpit.beam.glideAngleDeg;
    const slope = Math.tan((steepnessDeg * Math.PI) / 180);
    const toAimFt = Math.max(300, now.distanceToThresholdNm * FEET_PER_NM + 900);
    const highFt = wheelsFt - toAimFt * slope;
    const needed = sinkAlongFpm(groundspeedKt, steepnessDeg);
    return -Math.max(0, Math.min(needed + 450, needed + highFt * 6));
  };
}

/** Sink, in ft/min, that keeps an angle at a groundspeed. */
function sinkAlongFpm(groundspeedKt: number, angleDeg: number): number {
  return ((groundspeedKt * FEET_PER_NM) / 60) * Math.tan((angleDeg * Math.PI) / 180);
}
