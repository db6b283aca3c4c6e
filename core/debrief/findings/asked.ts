import type { Excursion } from '../../approach/excursions.ts';
import { at, type Flown } from '../../approach/flown.ts';
import type { WholeMeasures } from '../../approach/whole-measures.ts';
import { firstAfter, type Polyline, type Span } from '../../numeric/polyline.ts';
import { recordedIn, type Case } from '../../standard/case.ts';
import type { ApproachJudgement, CriterionJudgement } from '../../standard/judgement.ts';

/** Everything that a finding may be made of: what was flown, what the standard says of it, and its measures. */
export interface Asked {
  readonly sitting: Case;
  readonly judgement: ApproachJudgement;
  readonly measures: WholeMeasures;
}

export type Needle = 'localizer' | 'glidepath';

/** A needle's column, fractions of full scale. */
export function needleColumn({ sitting }: Asked, needle: Needle): Float64Array {
  const { localizerFullScale, glidepathFullScale } = sitting.flown.deviations;
  return needle === 'localizer' ? localizerFullScale : glidepathFullScale;
}

/** What was recorded of a column over a span. */
export function over({ sitting }: Asked, column: Float64Array, span: Span): Polyline[] {
  return recordedIn(sitting, column, [span]);
}

/** A value that may be off by a half-width, and when it was. */
export interface Reading {
  readonly s: number;
  readonly value: number;
}

/** The recorded value farthest to one side over a span; null where nothing was recorded. */
export function farthestOver(asked: Asked, column: Float64Array, span: Span, side: 1 | -1): Reading | null {
  let found: Reading | null = null;
  for (const { timeS, value } of over(asked, column, span))
    for (const [i, s] of timeS.entries())
      if (found === null || side * value[i]! > side * found.value) found = { s, value: value[i]! };
  return found;
}

/** A column's value at a moment; NaN where it was not recorded. */
export function valueAtMoment({ sitting }: Asked, column: Float64Array, s: number): number {
  return at(sitting.flown, column, s);
}

/** What the half-width of a needle is at a moment, fractions of full scale. */
export function needleHalfWidth({ sitting: { flown } }: Asked, needle: Needle, s: number): number {
  return flown.needleError[needle](fixAt(flown, s));
}

/** The fix at a moment or next after it. */
export function fixAt({ track }: Flown, s: number): number {
  return Math.min(firstAfter(track.timeS, s), track.count - 1);
}

export function criterionOf({ judgement }: Asked, id: string): CriterionJudgement | null {
  return judgement.criteria.find((criterion) => criterion.id === id) ?? null;
}

export function spanOf({ startS, endS }: Excursion): Span {
  return { startS, endS };
}
