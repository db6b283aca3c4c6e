import type { Remark } from '../../core/standard/stated.ts';

/** Which finding of which approach is meant. */
export type About = Pick<Remark, 'approachUtc' | 'finding'>;

const NOTHING_SAID = { verdict: null, words: null, answer: null } as const;

/** All remarks with one of them changed; one that says nothing any more is none. */
export function withRemark(
  remarks: readonly Remark[],
  about: About,
  change: Partial<Omit<Remark, keyof About>>,
): Remark[] {
  const isMeant = ({ approachUtc, finding }: About) =>
    approachUtc === about.approachUtc && finding === about.finding;
  const before = remarks.find(isMeant) ?? { ...about, ...NOTHING_SAID };
  const now = { ...before, ...change };
  const others = remarks.filter((remark) => !isMeant(remark));
  return now.verdict === null && now.words === null && now.answer === null ? others : [...others, now];
}
