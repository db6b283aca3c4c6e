import type { GateJudgement } from '../standard/judgement.ts';
import { utcText } from '../units/utc.ts';
import { unknownOf } from './known.ts';
import { spanDebrief } from './criterion-debrief.ts';
import type { DebriefStability } from './debrief.ts';

/** One gate as the answer holds it. */
export function stabilityDebrief(gate: GateJudgement): DebriefStability {
  const utc = gate.timeS === null ? null : utcText(gate.timeS);
  return {
    gate: gate.gate,
    heightFt: gate.heightFt,
    utc,
    counts: gate.counts,
    verdict: gate.verdict,
    failed: gate.items.filter(({ verdict }) => verdict === 'not-met').map(({ item }) => item),
    items: gate.items.map(({ item, measured, verdict, why }) => {
      const unknown = unknownOf({ measured }, { measured: `Not assessed: ${why}.` });
      return { item, measured, verdict, why, unknown };
    }),
    lostAfter: gate.lostAfter.map(({ item, isProven, ...span }) => ({
      item,
      proven: isProven,
      ...spanDebrief(span),
    })),
    doubtedAfter: gate.doubtedAfter,
    why: gate.why,
    unknown: unknownOf({ utc }, { utc: 'Not descended through on final.' }),
  };
}
