import type { Verdict } from '../../core/standard/judgement.ts';

/** A verdict has a shape and a word; the colour comes after both. */
export const VERDICTS: Readonly<Record<Verdict, { readonly sign: string; readonly word: string }>> = {
  met: { sign: '●', word: 'met' },
  'not-met': { sign: '▲', word: 'not met' },
  unclear: { sign: '◐', word: 'unclear' },
  'not-assessed': { sign: '○', word: 'not assessed' },
};
