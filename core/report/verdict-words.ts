import type { DebriefStability } from '../debrief/debrief.ts';
import type { Verdict } from '../standard/judgement.ts';

/** A verdict has a shape and a word; a colour, where there is one, comes after both. */
export const VERDICTS: Readonly<Record<Verdict, { readonly sign: string; readonly word: string }>> = {
  met: { sign: '●', word: 'met' },
  'not-met': { sign: '▲', word: 'not met' },
  unclear: { sign: '◐', word: 'unclear' },
  'not-assessed': { sign: '○', word: 'not assessed' },
};

/** The word of a gate's verdict. */
export function stableWord(verdict: DebriefStability['verdict']): string {
  if (verdict === 'met') return 'stable';
  return verdict === 'not-met' ? 'not stable' : VERDICTS[verdict].word;
}
