import { SYNONYMS } from './column-words.ts';
import { UNIT_WORDS_MAX, unitOf } from './unit-words.ts';
import type { Unit } from './unit-words.ts';

/** A header cell taken apart: its name in the terms of `column-words.ts`, sorted, and the unit it names. */
export interface HeaderTokens {
  readonly terms: readonly string[];
  readonly unit: Unit | null;
  /** The unit as the file writes it, or how it says that times are written. */
  readonly unitText: string | null;
}

const SIGNS: readonly (readonly [RegExp, string])[] = [
  [/°\s*C\b|º\s*C\b/g, ' degc '],
  [/°\s*F\b|º\s*F\b/g, ' degf '],
  [/[°º]/g, ' deg '],
  [/[µμ]/g, 'u'],
  [/%/g, ' percent '],
  [/ß/g, 'ss'],
  [/œ/g, 'oe'],
];

/** Lower-case words without accents or signs: `GndSpd (km/h)` becomes gnd, spd, km, h. */
export function wordsOf(text: string): string[] {
  let plain = text;
  for (const [sign, words] of SIGNS) plain = plain.replace(sign, words);
  return plain
    .normalize('NFKD')
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/([a-z\d])([A-Z])/g, '$1 $2')
    .replace(/([A-Z]{2})([A-Z][a-z]{4,})/g, '$1 $2')
    .toLowerCase()
    .split(/[^a-z\d]+/)
    .filter((word) => word !== '');
}

const BRACKETED = /[([{]([^)\]}]*)[)\]}]/;

/** `hh:mm:ss`, `yyyy-mm-dd` and the like say how a time is written; their mm is no millimetre. */
const TIME_PATTERN =
  /^#?\s*(?:(?:[ymdhs]{2,4}[-.:/ t_]+)+[ymdhs]{2,4}|hhmmss|yyyymmdd|ddmmyy)(?:[.,][s0f]+)?z?$/i;

/**
 * Takes a header cell apart, with the cell of the units row under or over it ('' when there is none). What stands
 * in brackets or in the units row may name the kind as well as the unit ("ft msl"): words that are no unit count
 * as words of the name. Two readings, the likelier first: a unit at the end of the name taken for one (Speed km/h),
 * and taken for a part of the name (Track M).
 */
export function headerReadings(header: string, unitCell: string): [HeaderTokens, HeaderTokens] {
  const bracket = BRACKETED.exec(header)?.[1] ?? '';
  const name = wordsOf(header.replace(BRACKETED, ' '));
  const besides = [bracket, unitCell].map((text) =>
    takeUnit(text, TIME_PATTERN.test(text.trim()) ? [] : wordsOf(text), 0),
  );
  const besideWords = besides.flatMap((part) => part.words);
  const pattern =
    [bracket, unitCell].map((text) => text.trim()).find((text) => TIME_PATTERN.test(text)) ?? null;
  const named = besides.find((part) => part.unit !== null) ?? { unit: null, unitText: pattern };
  const whole = { terms: termsOf([...name, ...besideWords]), unit: named.unit, unitText: named.unitText };
  const own = takeUnit(header, name, 1);
  if (named.unit !== null && own.unit !== named.unit) return [whole, whole];
  const { unit, unitText } = own.unit === null || named.unit !== null ? named : own;
  return [{ terms: termsOf([...own.words, ...besideWords]), unit, unitText }, whole];
}

/** Whether a cell holds a unit or a time pattern and nothing that could be a name. */
export function isUnitCell(text: string): boolean {
  return (
    TIME_PATTERN.test(text.trim()) ||
    unitOf(wordsOf(text).join(' ')) !== undefined ||
    takeUnit(text, wordsOf(text), 0).unit !== null
  );
}

interface Taken {
  readonly words: readonly string[];
  readonly unit: Unit | null;
  readonly unitText: string | null;
}

/** Splits off the longest run of words that names a unit; of a name, the first `keep` words stay. */
function takeUnit(text: string, words: string[], keep: number): Taken {
  for (let length = Math.min(UNIT_WORDS_MAX, words.length - keep); length > 0; length--) {
    for (let at = words.length - length; at >= keep; at--) {
      const run = words.slice(at, at + length).join(' ');
      const unit = unitOf(run);
      const mayStand = keep === 0 || at + length === words.length || run.length > 1;
      if (unit !== undefined && mayStand) {
        return { words: words.toSpliced(at, length), unit, unitText: keep === 0 ? text.trim() : run };
      }
    }
  }
  return { words, unit: null, unitText: null };
}

/** Words in the table's terms, each once and in alphabetical order; a counting digit says nothing. */
function termsOf(words: readonly string[]): string[] {
  const terms = words.flatMap(
    (word) =>
      SYNONYMS.get(word) ?? SYNONYMS.get(word.replace(/\d+$/, '')) ?? (/^\d+$/.test(word) ? [] : [word]),
  );
  return [...new Set(terms)].sort();
}
