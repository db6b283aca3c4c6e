import { DescentSeconds } from '../../approach/descent.ts';
import { momentOf } from '../../approach/flown-approach.ts';
import { at, type Flown } from '../../approach/flown.ts';
import type { WholeMeasures } from '../../approach/whole-measures.ts';
import type { Column } from '../../numeric/lazy-column.ts';
import { firstAfter, type Polyline, type Span } from '../../numeric/polyline.ts';
import { finalOf, recordedIn, type Case } from '../../standard/case.ts';
import type { ApproachJudgement, CriterionJudgement } from '../../standard/judgement.ts';

/** Everything that a finding may be made of: what was flown, what the standard says of it, and its measures. */
export interface Asked {
  readonly sitting: Case;
  readonly judgement: ApproachJudgement;
  readonly measures: WholeMeasures;
  /** Those of the descent from where the localizer came alive on; null without a final. */
  readonly seconds: DescentSeconds | null;
}

export function askedOf(sitting: Case, judgement: ApproachJudgement, measures: WholeMeasures): Asked {
  const span = onNeedles(sitting);
  return { sitting, judgement, measures, seconds: span && new DescentSeconds(sitting.flown, span) };
}

/** From localizer-alive to the end of final; null without a final. */
export function onNeedles(sitting: Case): Span | null {
  const final = finalOf(sitting);
  if (!final) return null;
  return { startS: momentOf(sitting.approach, 'localizer-alive') ?? final.startS, endS: final.endS };
}

export type Needle = 'localizer' | 'glidepath';

/** A needle's column, fractions of full scale. */
export function needleColumn({ sitting }: Pick<Asked, 'sitting'>, needle: Needle): Float64Array {
  const { localizerFullScale, glidepathFullScale } = sitting.flown.deviations;
  return needle === 'localizer' ? localizerFullScale : glidepathFullScale;
}

/** What was recorded of a column over a span. */
export function over({ sitting }: Pick<Asked, 'sitting'>, column: Column, span: Span): readonly Polyline[] {
  return recordedIn(sitting, column, [span]);
}

/** A value and when it was. */
export interface Reading {
  readonly s: number;
  readonly value: number;
}

/** The recorded value farthest to one side over a span; null where nothing was recorded. */
export function farthestOver(asked: Asked, column: Float64Array, span: Span, side: 1 | -1): Reading | null {
  let farthest = -Infinity;
  let farthestS = NaN;
  for (const { timeS, value } of over(asked, column, span))
    for (let i = 0; i < value.length; i++)
      if (side * value[i]! > farthest) {
        farthest = side * value[i]!;
        farthestS = timeS[i]!;
      }
  return farthest === -Infinity ? null : { s: farthestS, value: side * farthest };
}

/** When a column was first at or beyond a level, towards a side, within a span; null when it never was. */
export function reachedS(
  asked: Asked,
  column: Float64Array,
  span: Span,
  levelAt: { readonly value: number; readonly side: 1 | -1 },
): number | null {
  const { value: asks, side } = levelAt;
  for (const { timeS, value } of over(asked, column, span))
    for (let i = 0; i < value.length; i++) if (side * value[i]! >= side * asks) return timeS[i]!;
  return null;
}

/** A column's value at a moment; NaN where it was not recorded. */
export function valueAtMoment({ sitting }: Asked, column: Float64Array, s: number): number {
  return at(sitting.flown, column, s);
}

/** The half-width of a needle at a moment, fractions of full scale. */
export function needleHalfWidth({ sitting: { flown } }: Asked, needle: Needle, s: number): number {
  return flown.needleError[needle].at(fixAt(flown, s));
}

/** The fix at a moment or next after it. */
export function fixAt({ track }: Flown, s: number): number {
  return Math.min(firstAfter(track.timeS, s), track.count - 1);
}

export function criterionOf({ judgement }: Asked, id: string): CriterionJudgement | null {
  return judgement.criteria.find((criterion) => criterion.id === id) ?? null;
}

/** Miles to the threshold at a moment. */
export function distanceNmAt(asked: Asked, s: number): number {
  return valueAtMoment(asked, asked.sitting.flown.deviations.distanceToThresholdNm, s);
}

/** Height above the touchdown zone at a moment, by what gates are judged by. */
export function heightFtAt(asked: Asked, s: number): number {
  const { decidingAltitudeFt, facility } = asked.sitting.flown;
  return valueAtMoment(asked, decidingAltitudeFt, s) - facility.touchdownZoneElevationFt;
}
