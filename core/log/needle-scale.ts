import type { Issue } from '../issue/issue.ts';
import { logIssue } from './log-issue.ts';
import type { Unit } from './unit-words.ts';

/** DDM at full scale (14 CFR 171.253 localizer, 171.267 glidepath; published). */
const DDM_FULL_SCALE = { localizer: 0.155, glidepath: 0.175 } as const;
/** A needle at its stop may be recorded a little beyond it. */
const STOP_SLACK = 1.05;

export interface NeedleScale {
  /** Full scales in one unit of the column; null when that cannot be known. */
  readonly factor: number | null;
  readonly issue: Issue | null;
}

/** How a recorded needle becomes a fraction of full scale, by its unit, else by the largest value seen. */
export function needleScale(
  axis: 'localizer' | 'glidepath',
  header: string,
  unit: Unit | null,
  values: Float64Array,
): NeedleScale {
  if (unit?.name === 'DDM') return { factor: 1 / DDM_FULL_SCALE[axis], issue: null };
  if (unit?.name === '%') return { factor: 0.01, issue: null };
  if (unit !== null && unit.name !== 'dots') return { factor: unit.factor, issue: null };
  const largest = values.reduce((max, value) => Math.max(max, Math.abs(value) || 0), 0);
  const inDots = unit !== null;
  if (!inDots && largest <= STOP_SLACK) return { factor: 1, issue: null };
  if (largest > 5 * STOP_SLACK) {
    const message = `Column "${header}" reaches ${largest}, which is no known needle scale: it is not used.`;
    return {
      factor: null,
      issue: logIssue('needle-scale-unknown', message, {
        tip: 'Set the unit of the column: full scale, dots of 2, dots of 5, DDM or µA.',
      }),
    };
  }
  if (largest > 2.5 * STOP_SLACK) return { factor: 1 / 5, issue: null };
  if (largest > 1.9) return { factor: 1 / 2, issue: null };
  const message = `Column "${header}" is in dots but never reaches the stop (largest ${largest}): taken as 2 dots for full scale.`;
  return {
    factor: 1 / 2,
    issue: logIssue('needle-scale-assumed', message, {
      tip: 'Set the unit of the column to "dots of 5" if full scale is 5 dots.',
    }),
  };
}
