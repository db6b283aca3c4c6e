import type { Flown } from './flown.ts';

/**
 * The position error of a plain receiver (8 m, GPS SPS Performance Standard 2020, table 3.8-3, second-hand) twice
 * over: better receivers are given it as well, so that which runway was landed on hangs on no class.
 */
const LEAST_FT = 50;

/** How far beside the runway's edge a fix may lie and still be on it, feet: farther where its own error is larger. */
export function besideRunwayFt({ error }: Pick<Flown, 'error'>, i: number): number {
  return Math.max(LEAST_FT, error.sideFt(i));
}
