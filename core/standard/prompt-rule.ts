import type { Span } from '../numeric/polyline.ts';
import { finalOf, moment, type Case } from './case.ts';
import { fallsToS } from './falling.ts';
import { gateDatumFt } from './gate-datum.ts';
import type { PromptRule } from './prompt.ts';

const LOW_FT = 500;

/** What a correction has to keep to in order to be prompt, on one stretch of one approach. */
export function promptRule(
  sitting: Case,
  stretch: Span,
  { depth, stop }: Pick<PromptRule, 'depth' | 'stop'>,
): PromptRule {
  const final = finalOf(sitting) ?? stretch;
  const onFinal = stretch.startS >= final.startS;
  const judged = onFinal ? final : stretch;
  return {
    depth,
    stop,
    lowFromS: lowFromS(sitting, judged),
    decisionS: moment(sitting, 'decision-altitude'),
    finalS: judged.endS - judged.startS,
  };
}

/** When the aircraft was first down to 500 ft above the standard's datum on a stretch. */
function lowFromS({ flown, standard }: Case, stretch: Span): number {
  const lowFt = gateDatumFt(standard, flown.facility) + LOW_FT;
  return fallsToS(flown, stretch, flown.decidingAltitudeFt, lowFt) ?? Infinity;
}
