import { wander, type Random } from './random.ts';

/** How far a receiver is off: a slow wander that the next second shares, and a little that it does not. */
export interface GnssClass {
  /** Radius that holds 95 % of horizontal errors. */
  readonly horizontal95M: number;
  /** Half-width that holds 95 % of vertical errors. */
  readonly vertical95M: number;
  /** Standard deviation of what changes from fix to fix, per axis. */
  readonly whiteM: number;
  readonly timeConstantS: number;
  /** Of the slow variance, what stays the same through a flight; none when not said. */
  readonly constantShare?: number;
}

/** Truth itself. */
export const NO_ERROR: GnssClass = { horizontal95M: 0, vertical95M: 0, whiteM: 0, timeConstantS: 1 };

/** 0.61 to 1.06 m and 1.03 to 1.79 m by site: FAA WAAS Performance Analysis Report 10 (published). */
export const AUGMENTED: GnssClass = {
  horizontal95M: 1.06,
  vertical95M: 1.79,
  whiteM: 0.1,
  timeConstantS: 200,
};

/** 8 m and 13 m, global average: GPS SPS Performance Standard, 5th edition, table 3.8-3 (second-hand). */
export const PLAIN: GnssClass = { horizontal95M: 8, vertical95M: 13, whiteM: 0.3, timeConstantS: 300 };

/** Half as much again as plain, and restless; our own choice, no source. */
export const PHONE: GnssClass = { horizontal95M: 12, vertical95M: 20, whiteM: 0.8, timeConstantS: 120 };

export interface GnssError {
  readonly eastM: number;
  readonly northM: number;
  readonly upM: number;
}

/** Radius over standard deviation per axis that holds 95 % in two dimensions: √(−2 ln 0.05) (computed). */
const RADIUS_95 = Math.sqrt(-2 * Math.log(0.05));
/** Half-width over standard deviation that holds 95 % in one dimension (standard normal; computed). */
const HALF_WIDTH_95 = 1.959964;

/** Standard deviation per horizontal axis and in height of a class, in metres. */
export function standardDeviationsM(kind: GnssClass): { perAxisM: number; upM: number } {
  return { perAxisM: kind.horizontal95M / RADIUS_95, upM: kind.vertical95M / HALF_WIDTH_95 };
}

/** A receiver's error from one fix to the next. */
export function gnssErrors(kind: GnssClass, random: Random): (stepS: number) => GnssError {
  const { perAxisM, upM } = standardDeviationsM(kind);
  const slow = (sdM: number): number => Math.sqrt(Math.max(0, sdM ** 2 - kind.whiteM ** 2));
  const { constantShare = 0, timeConstantS } = kind;
  const slowError = (name: string, sdM: number) => {
    const constantM =
      constantShare === 0
        ? 0
        : Math.sqrt(constantShare) * slow(sdM) * random.fork(`constant ${name}`).gaussian();
    const wandering = wander(random.fork(name), Math.sqrt(1 - constantShare) * slow(sdM), timeConstantS);
    return { step: (stepS: number) => constantM + wandering.step(stepS) };
  };
  const [east, north, up] = [slowError('east', perAxisM), slowError('north', perAxisM), slowError('up', upM)];
  const white = random.fork('white');
  return (stepS) => ({
    eastM: east.step(stepS) + kind.whiteM * white.gaussian(),
    northM: north.step(stepS) + kind.whiteM * white.gaussian(),
    upM: up.step(stepS) + kind.whiteM * white.gaussian(),
  });
}
