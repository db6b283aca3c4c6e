import { describe, expect, it } from 'vitest';
import { COLUMN_MEANINGS, SYNONYMS } from '../../../core/log/column-words.ts';
import { headerKey } from '../../../core/log/header-key.ts';
import { wordsOf } from '../../../core/log/header-tokens.ts';
import { QUANTITIES } from '../../../core/log/log.ts';
import { QUANTITY_RULES } from '../../../core/log/quantity-rules.ts';
import { UNITS } from '../../../core/log/unit-words.ts';

describe('the tables of words', () => {
  it('every quantity has words of its own', () => {
    const meanings = new Set(COLUMN_MEANINGS.map(([meaning]) => meaning));
    expect(QUANTITIES.filter((quantity) => !meanings.has(quantity))).toEqual([]);
  });

  it('every quantity has a usual unit of its own dimension', () => {
    const wrong = QUANTITIES.filter((quantity) => {
      const { dimension, usualUnit } = QUANTITY_RULES[quantity];
      return UNITS.find((unit) => unit.name === usualUnit)?.dimension !== dimension;
    });
    expect(wrong).toEqual([]);
  });

  it('every spelling is written as headers are taken apart, so that it can be met', () => {
    expect([...SYNONYMS.keys()].filter((word) => wordsOf(word).join(' ') !== word)).toEqual([]);
    const spellings = UNITS.flatMap((unit) => unit.words);
    expect(spellings.filter((words) => wordsOf(words).join(' ') !== words)).toEqual([]);
    expect(new Set(spellings).size).toBe(spellings.length);
  });

  it('every meaning can be reached: no set of terms stands twice under one meaning', () => {
    const keys = COLUMN_MEANINGS.flatMap(([meaning, , ...sets]) =>
      sets.map((terms) => `${meaning}: ${terms.split(' ').toSorted().join(' ')}`),
    );
    expect(keys.filter((key, i) => keys.indexOf(key) !== i)).toEqual([]);
  });
});

describe('the key of a header', () => {
  const columns = (...headers: string[]) => headers.map((header) => ({ header }));

  it('is the same for the same names, whatever their case and padding', () => {
    expect(headerKey(columns('Time', 'Lat'))).toBe(headerKey(columns(' time ', 'LAT')));
    expect(headerKey(columns('Time', 'Lat'))).toMatch(/^[0-9a-f]{16}$/);
  });

  it('is another for other names, another order or another split', () => {
    const keys = [
      columns('a', 'b'),
      columns('b', 'a'),
      columns('ab'),
      columns('a'),
      columns('a', 'b', ''),
      columns(),
    ].map((header) => headerKey(header));
    expect(new Set(keys).size).toBe(keys.length);
  });

  // FNV-1a, 32 bits, of "a" is e40c292c: draft-eastlake-fnv, test vectors; from memory.
  it('begins with FNV-1a of the names', () => {
    expect(headerKey(columns('a')).slice(0, 8)).toBe('e40c292c');
  });
});
