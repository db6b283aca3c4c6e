import { findExcursions } from '../../approach/excursions.ts';
import type { Span } from '../../numeric/polyline.ts';
import { finalOf } from '../../standard/case.ts';
import { needleColumn, over, type Asked } from './asked.ts';

/** A time beyond so much of the localizer's scale to one side, on final. */
export interface Spell extends Span {
  /** 1 right of course, −1 left. */
  readonly side: 1 | -1;
  readonly peakFullScale: number;
  readonly peakS: number;
  /** Final began within it: nobody saw it leave. */
  readonly fromStart: boolean;
}

/** The spells of final beyond a share of the localizer's scale, in order. */
export function localizerSpells(asked: Asked, beyondFullScale: number): Spell[] {
  const final = finalOf(asked.sitting);
  if (final === null) return [];
  const parts = over(asked, needleColumn(asked, 'localizer'), final);
  return findExcursions(parts, { lower: -beyondFullScale, upper: beyondFullScale }, 0.05).map(
    ({ startS, endS, side, peak, peakS }) => ({
      startS,
      endS,
      side: side === 'above' ? 1 : -1,
      peakFullScale: peak,
      peakS,
      fromStart: startS <= final.startS,
    }),
  );
}
