import type { GateJudgement } from '../standard/judgement.ts';
import { utcText } from '../units/utc.ts';
import { spanDebrief } from './criterion-debrief.ts';
import type { DebriefStability } from './debrief.ts';

/** One gate as the answer holds it. */
export function stabilityDebrief(gate: GateJudgement): DebriefStability {
  return {
    gate: gate.gate,
    heightFt: gate.heightFt,
    utc: gate.timeS === null ? null : utcText(gate.timeS),
    counts: gate.counts,
    verdict: gate.verdict,
    failed: gate.items.filter(({ verdict }) => verdict === 'not-met').map(({ item }) => item),
    items: gate.items.map(({ item, measured, verdict, why }) => ({ item, measured, verdict, why })),
    lostAfter: gate.lostAfter.map(({ item, isProven, ...span }) => ({
      item,
      proven: isProven,
      ...spanDebrief(span),
    })),
    doubtedAfter: gate.doubtedAfter,
    why: gate.why,
  };
}
