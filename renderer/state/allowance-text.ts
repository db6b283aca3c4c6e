import type { Allowable } from '../../core/standard/allowable.ts';
import type { Allowance } from '../../core/standard/stated.ts';

/** An allowance as it was typed, or what is wrong with either of its parts. */
export type TypedAllowance =
  | { readonly allowance: Allowance }
  | { readonly allowance: null; readonly by: string | null; readonly reason: string | null };

/** More room than this makes no sense on any tolerance; ours. */
const MOST: Readonly<Record<Allowable['unit'], number>> = {
  'full scale': 1,
  ft: 500,
  kt: 50,
  'ft/min': 2000,
  deg: 45,
  s: 60,
};
const LONGEST_REASON = 200;

/** Reads how much more room, and why. */
export function allowanceFrom({ id, unit }: Allowable, by: string, reason: string): TypedAllowance {
  const room = /^\d*[.,]?\d+$/.test(by.trim()) ? Number(by.trim().replace(',', '.')) : NaN;
  const wrong = {
    by: room > 0 && room <= MOST[unit] ? null : `A number above 0, and at most ${MOST[unit]}.`,
    reason: reasonProblem(reason.trim()),
  };
  if (wrong.by !== null || wrong.reason !== null) return { allowance: null, ...wrong };
  return { allowance: { criterion: id, by: room, reason: reason.trim() } };
}

function reasonProblem(reason: string): string | null {
  if (reason === '') return 'Say why: it is shown beside the verdict.';
  return reason.length <= LONGEST_REASON ? null : `At most ${LONGEST_REASON} characters.`;
}

/** What the room is told in, as the label of its field says it. */
export const UNIT_WORDS: Readonly<Record<Allowable['unit'], string>> = {
  'full scale': 'of full scale',
  ft: 'ft',
  kt: 'kt',
  'ft/min': 'ft/min',
  deg: 'degrees',
  s: 's',
};
