import { METRES_PER_FOOT } from '../../../core/units/units.ts';
import type { AltimeterClass } from '../flight/altimeter-error.ts';
import { standardDeviationsM, type GnssClass } from '../flight/gnss-error.ts';

/**
 * How little may decide. A needle that touches its limit, a height that is sunk to and no lower, a level flight that
 * sinks by a foot: there a log's last digit says which of several moments it was, and each of them is right. Each rule
 * is therefore also read a hair wider and a hair narrower.
 */
export interface Hair {
  /** Of a height on the beam. */
  readonly heightFt: number;
  /** Of an altimeter, by which gates and decision altitude are judged where a log has it. */
  readonly indicatedFt: number;
  /** Between two heights of one log, within a minute. */
  readonly stepFt: number;
  /** To the side: the needle of the localizer. */
  readonly sideFt: number;
  /** Of a ground track over 5 s. */
  readonly angleDeg: number;
  /** Of the slope of heights over 6 s. */
  readonly sinkFpm: number;
  /** From fix to fix: what is so for less than this, a log may not show. */
  readonly intervalS: number;
}

/** The last digits of a log's heights. */
export interface Digits {
  readonly heightFt: number;
  readonly indicatedFt: number;
}

/** A position's last digit, the seventh of a degree,. */
const POSITION_FT = 0.04;
const LEAST_FPM = 1;
/** A tenth of g to the side, or up or down: as much as flies from one fix to the next, and its line leaves out. */
const ACCELERATION_FPS2 = 3.2;
/** Three standard deviations of the slope of seven heights that are rounded to a foot: 3 / √(12 · 28) ft/s (computed). */
const ROUNDED_SLOPE_FPM = 10;
/** Seconds between the ends of a ground track, and ft/s in the slowest approach, 60 kt. */
const TRACK_S = 5;
const SLOWEST_FPS = 100;

/**
 * Of a log without errors: half of a last digit and between two heights a whole one, and how far a line between two
 * fixes passes beside what was flown.
 */
export function hairOfDigits({ heightFt, indicatedFt }: Digits, rateHz: number): Hair {
  const sagittaFt = ACCELERATION_FPS2 / rateHz ** 2 / 8;
  // A fix may miss the bottom of a dip as well as round it.
  const stepFt = heightFt + sagittaFt;
  return {
    heightFt: heightFt / 2 + sagittaFt,
    indicatedFt: indicatedFt / 2 + sagittaFt,
    stepFt,
    sideFt: POSITION_FT + sagittaFt,
    angleDeg: trackDeg(2 * (POSITION_FT + sagittaFt)),
    sinkFpm: LEAST_FPM + ROUNDED_SLOPE_FPM * stepFt,
    intervalS: 1 / rateHz,
  };
}

/** What so many feet between the two ends of a ground track turn it by. */
function trackDeg(sideFt: number): number {
  return (Math.atan(sideFt / (TRACK_S * SLOWEST_FPS)) * 180) / Math.PI;
}

const STANDARD_DEVIATIONS = 3;

/** Of a log with the errors of a receiver and an altimeter: three standard deviations of what they do to each. */
export function hairOfErrors(gnss: GnssClass, altimeter: AltimeterClass, rateHz: number): Hair {
  const { perAxisM, upM } = standardDeviationsM(gnss);
  /** Of the difference of two errors so many seconds apart. */
  const changeFt = (sdM: number, seconds: number): number =>
    (STANDARD_DEVIATIONS / METRES_PER_FOOT) *
    Math.sqrt(2 * (gnss.whiteM ** 2 + sdM ** 2 * (1 - Math.exp(-seconds / gnss.timeConstantS))));
  const heightFt = (STANDARD_DEVIATIONS * upM) / METRES_PER_FOOT;
  return {
    heightFt,
    indicatedFt: altimeter.stepFt,
    stepFt: changeFt(upM, 60),
    sideFt: (STANDARD_DEVIATIONS * perAxisM) / METRES_PER_FOOT,
    angleDeg: trackDeg(changeFt(perAxisM, TRACK_S)),
    // As the two ends of a straight line of 6 s would have it: a fit through all between has less.
    sinkFpm: (changeFt(upM, 6) / 6) * 60,
    intervalS: 1 / rateHz,
  };
}

/** Of a hold: a hold is counted in tenths of a second. */
export const HOLD_HAIR_S = 0.1;

/** A rule read a hair wider, as it stands, and a hair narrower. */
export const READINGS = { wider: 1, asItStands: 0, narrower: -1 } as const;
