import { issue, type Issue } from '../issue/issue.ts';
import { FEET_PER_METRE } from '../units/units.ts';

/** Steps of position that a log may be rounded to, coarsest first: degrees, in words. */
const POSITION_STEPS: readonly (readonly [stepDeg: number, words: string])[] = [
  [0.01, '0.01°'],
  [1 / 600, "0.1'"],
  [0.001, '0.001°'],
  [1 / 3600, '1"'],
  [1 / 6000, "0.01'"],
  [0.0001, '0.0001°'],
];
/** Steps of a transponder's height, and of a phone's that rounds to ten metres. */
const HEIGHT_STEPS: readonly (readonly [stepFt: number, words: string])[] = [
  [100, '100 ft'],
  [10 * FEET_PER_METRE, '10 m'],
  [25, '25 ft'],
];
/** Finer steps, which show on no needle and yet in a sink rate. */
const FINER_STEPS_FT: readonly number[] = [20, 10, FEET_PER_METRE];
/** Heights that change by less than so many steps may be round by chance. */
const LEAST_STEPS = 5;
/** Rounding that double precision leaves behind. */
const ROUNDING = 1e-6;

/** Says when positions are rounded so far that the step shows on a needle (0.0001° is 36 ft). */
export function coarsePositions(latDeg: Float64Array, lonDeg: Float64Array): Issue[] {
  const stepDeg = positionStepDeg(latDeg, lonDeg);
  const found = POSITION_STEPS.find(([step]) => step === stepDeg);
  if (!found) return [];
  const message = `All positions are rounded to ${found[1]}: the needles move in steps.`;
  return [issue('warning', 'position-coarse', message, { count: latDeg.length })];
}

/** Says when heights are rounded so far that the step shows on the glidepath. */
export function coarseHeights(altitudeFt: Float64Array): Issue[] {
  const found = HEIGHT_STEPS.find(([step]) => allMultiples(altitudeFt, step));
  if (!found) return [];
  const message = `All altitudes are rounded to ${found[1]}: the glidepath needle moves in steps.`;
  return [issue('warning', 'altitude-coarse', message, { count: altitudeFt.length })];
}

/** The step that heights are rounded to, feet; 0 where none shows. */
export function heightStepFt(heightFt: Float64Array): number {
  const steps = [...HEIGHT_STEPS.map(([stepFt]) => stepFt), ...FINER_STEPS_FT];
  const step = steps.find((stepFt) => allMultiples(heightFt, stepFt)) ?? 0;
  let [lowest, highest] = [Infinity, -Infinity];
  if (step > 0)
    for (const ft of heightFt) {
      if (ft < lowest) lowest = ft;
      if (ft > highest) highest = ft;
    }
  return highest - lowest >= LEAST_STEPS * step ? step : 0;
}

/** The step that positions are rounded to, degrees; 0 where none shows. */
export function positionStepDeg(latDeg: Float64Array, lonDeg: Float64Array): number {
  return POSITION_STEPS.find(([step]) => allMultiples(latDeg, step) && allMultiples(lonDeg, step))?.[0] ?? 0;
}

function allMultiples(values: Float64Array, step: number): boolean {
  for (const value of values) {
    const steps = value / step;
    // NaN passes: a height that is missing says nothing of the others.
    if (Math.abs(steps - Math.round(steps)) > ROUNDING) return false;
  }
  return true;
}
