import { BESIDE, COLUMN_MEANINGS, NOT_USED } from './column-words.ts';
import type { Meaning } from './column-words.ts';
import { headerReadings } from './header-tokens.ts';
import type { HeaderTokens } from './header-tokens.ts';
import { isQuantity, unitFits } from './quantity-rules.ts';
import type { Unit } from './unit-words.ts';

/** What the words of a header say, before the values are looked at and before columns compete. */
export interface Recognised {
  readonly meaning: Meaning;
  readonly unit: Unit | null;
  readonly unitText: string | null;
  readonly confidence: number;
  readonly why: string;
  readonly terms: readonly string[];
}

const MEANINGS = new Map<string, { meaning: Meaning; sure: number }[]>();
for (const [meaning, sure, ...termSets] of COLUMN_MEANINGS) {
  for (const terms of termSets) {
    const key = terms.split(' ').sort().join(' ');
    MEANINGS.set(key, [...(MEANINGS.get(key) ?? []), { meaning, sure }]);
  }
}

/**
 * Takes a header for what its words and its unit say. Unknown words, or a unit of the wrong dimension, leave the
 * column unused: a wrong guess is worse than none, since the user can map the column by hand. A unit that the user
 * states stands in place of the header's.
 */
export function recogniseColumn(
  header: string,
  unitCell: string,
  common: ReadonlySet<string>,
  stated: Unit | null = null,
): Recognised {
  const [tokens, asWhole] = headerReadings(header, unitCell).map((reading) =>
    stated === null ? reading : { ...reading, unit: stated },
  ) as [HeaderTokens, HeaderTokens];
  const found = meaningOf(tokens, common) ?? meaningOf(asWhole, common);
  if (found !== null) return found;
  return { ...notUsed(tokens.terms), unit: tokens.unit, unitText: tokens.unitText, terms: tokens.terms };
}

function meaningOf(tokens: HeaderTokens, common: ReadonlySet<string>): Recognised | null {
  const terms = tokens.terms.filter((term) => !common.has(term));
  const bare = terms.filter((term) => !BESIDE.has(term));
  const candidates = MEANINGS.get(terms.join(' ')) ?? MEANINGS.get(bare.join(' ')) ?? [];
  const fitting = candidates.find(({ meaning, sure }) => fits(meaning, sure, tokens.unit));
  if (fitting === undefined) return null;
  const { meaning, sure } = fitting;
  if (meaning === null) return { ...notUsed(terms), ...tokens };
  const unitWords = tokens.unitText === null ? '' : `, unit "${tokens.unitText}"`;
  const confidence = tokens.unit === null ? sure : sure + (1 - sure) / 2;
  return { meaning, ...tokens, confidence, why: `the header says ${terms.join(' ')}${unitWords}` };
}

function fits(meaning: Meaning, sure: number, unit: Unit | null): boolean {
  if (meaning === null) return true;
  if (unit === null) return sure > 0;
  // Degrees and decimal minutes, not a difference of modulation.
  if (unit.name === 'DDM' && (meaning === 'latDeg' || meaning === 'lonDeg')) return true;
  if (!isQuantity(meaning)) return unit.dimension === 'time';
  return unitFits(unit, meaning);
}

function notUsed(terms: readonly string[]): { meaning: null; confidence: number; why: string } {
  const known = terms.find((term) => NOT_USED.has(term));
  const why =
    known === undefined ? 'nothing in this program uses a column of this name' : NOT_USED.get(known)!;
  return { meaning: null, confidence: 0, why };
}
