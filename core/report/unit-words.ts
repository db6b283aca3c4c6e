import type { LogColumn, UnitFrom } from '../log/log.ts';

const FROM_WORDS: Readonly<Record<Exclude<UnitFrom, 'header'>, string>> = {
  user: 'as you said',
  others: 'as the other columns',
  positions: 'as the positions show',
  values: 'as its values show',
  usual: 'as usual',
  assumed: 'assumed',
};

/** The unit that a column was read in, and how it is known where its header does not say: "ft, as you said". */
export function unitReadWords({ unitRead, unitText }: Pick<LogColumn, 'unitRead' | 'unitText'>): string {
  if (unitRead === null || unitRead.from === 'header') return unitText ?? '';
  return `${unitRead.name}, ${FROM_WORDS[unitRead.from]}`;
}
