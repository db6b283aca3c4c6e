import { COLUMN_MEANINGS } from './column-words.ts';
import { recogniseColumn } from './recognise-column.ts';

const KNOWN_TERMS = new Set(
  COLUMN_MEANINGS.flatMap(([, , ...sets]) => sets.flatMap((terms) => terms.split(' '))),
);
const NONE: ReadonlySet<string> = new Set();
/** Fewer columns than this may share a word by chance. */
const COLUMNS_MIN = 4;

/** Terms that most names share and no meaning uses: what the recorder puts before every name. */
export function commonTerms(names: readonly string[]): ReadonlySet<string> {
  const counts = new Map<string, number>();
  for (const name of names) {
    for (const term of recogniseColumn(name, '', NONE).terms) counts.set(term, (counts.get(term) ?? 0) + 1);
  }
  const enough = Math.max(COLUMNS_MIN, names.length / 2);
  return new Set(
    [...counts].flatMap(([term, count]) => (count >= enough && !KNOWN_TERMS.has(term) ? term : [])),
  );
}
