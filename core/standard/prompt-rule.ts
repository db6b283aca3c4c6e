import { firstCrossing } from '../approach/hold.ts';
import { firstAfter, type Span } from '../numeric/polyline.ts';
import { finalOf, moment, type Case } from './case.ts';
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

/** When the aircraft was first below 500 ft above the standard's datum on a stretch; Infinity when it never was. */
function lowFromS({ flown, standard }: Case, { startS, endS }: Span): number {
  const { track, decidingAltitudeFt } = flown;
  const lowFt = gateDatumFt(standard, flown.facility) + LOW_FT;
  for (let i = firstAfter(track.timeS, startS); i < track.count && track.timeS[i]! <= endS; i++) {
    if (!(decidingAltitudeFt[i]! < lowFt)) continue;
    return firstCrossing(track, { first: i - 1, last: i }, decidingAltitudeFt, lowFt) ?? track.timeS[i]!;
  }
  return Infinity;
}
