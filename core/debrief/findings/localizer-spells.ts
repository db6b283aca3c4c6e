import { momentOf } from '../../approach/flown-approach.ts';
import { findExcursions } from '../../approach/excursions.ts';
import type { Span } from '../../numeric/polyline.ts';
import { finalOf } from '../../standard/case.ts';
import { needleColumn, over, type Asked } from './asked.ts';

/** A time beyond so much of the localizer's scale to one side, that reached into final. */
export interface Spell extends Span {
  /** 1 right of course, −1 left. */
  readonly side: 1 | -1;
  readonly peakFullScale: number;
  readonly peakS: number;
  /** It was so from the start: nobody saw it leave. */
  readonly fromStart: boolean;
}

/** The spells beyond a share of the localizer's scale, from when it was established, that lasted into final; in order. */
export function localizerSpells(asked: Asked, beyondFullScale: number): Spell[] {
  const final = finalOf(asked.sitting);
  if (final === null) return [];
  const establishedS = momentOf(asked.sitting.approach, 'localizer-established') ?? final.startS;
  const startS = Math.min(establishedS, final.startS);
  const parts = over(asked, needleColumn(asked, 'localizer'), { startS, endS: final.endS });
  return findExcursions(parts, { lower: -beyondFullScale, upper: beyondFullScale }, 0.05)
    .filter(({ endS }) => endS > final.startS)
    .map((spell) => ({
      startS: spell.startS,
      endS: spell.endS,
      side: spell.side === 'above' ? 1 : -1,
      peakFullScale: spell.peak,
      peakS: spell.peakS,
      fromStart: spell.startS <= startS,
    }));
}
