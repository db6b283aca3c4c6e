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
}

/** The last digits of a log's heights. */
export interface Digits {
  readonly heightFt: number;
  readonly indicatedFt: number;
}

/** What a line from one fix to the next leaves out, and the hundredths of a foot of a position's last digit. */
const BETWEEN_FIXES = { heightFt: 0.05, sideFt: 0.05, angleDeg: 0.02, sinkFpm: 1 };
/** Three standard deviations of the slope of seven heights that are rounded to a foot: 3 / √(12 · 28) ft/s (computed). */
const ROUNDED_SLOPE_FPM = 10;
/** Seconds between the ends of a ground track, and ft/s in the slowest approach, 60 kt. */
const TRACK_S = 5;
const SLOWEST_FPS = 100;

/** Of a log without errors: half of a last digit, and between two heights a whole one. */
export function hairOfDigits({ heightFt, indicatedFt }: Digits): Hair {
  return {
    heightFt: heightFt / 2 + BETWEEN_FIXES.heightFt,
    indicatedFt: indicatedFt / 2 + BETWEEN_FIXES.heightFt,
    stepFt: heightFt,
    sideFt: BETWEEN_FIXES.sideFt,
    angleDeg: BETWEEN_FIXES.angleDeg,
    sinkFpm: BETWEEN_FIXES.sinkFpm + ROUNDED_SLOPE_FPM * heightFt,
  };
}

const STANDARD_DEVIATIONS = 3;

/** Of a log with the errors of a receiver and an altimeter: three standard deviations of what they do to each. */
export function hairOfErrors(gnss: GnssClass, altimeter: AltimeterClass): Hair {
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
    angleDeg: (Math.atan(changeFt(perAxisM, TRACK_S) / (TRACK_S * SLOWEST_FPS)) * 180) / Math.PI,
    // As the two ends of a straight line of 6 s would have it: a fit through all between has less.
    sinkFpm: (changeFt(upM, 6) / 6) * 60,
  };
}

/** Of a hold: a hold is counted in tenths of a second. */
export const HOLD_HAIR_S = 0.1;

/** A rule read a hair wider, as it stands, and a hair narrower. */
export const READINGS = { wider: 1, asItStands: 0, narrower: -1 } as const;
