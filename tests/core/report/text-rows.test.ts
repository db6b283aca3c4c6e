import { describe, expect, it } from 'vitest';
import { textCells, textLines, textRow } from '../../../core/report/text-rows.ts';

describe('a text is broken into lines', () => {
  it('between words, filling each line to the width', () => {
    expect(textLines('one two three four', 7)).toEqual(['one two', 'three', 'four']);
    expect(textLines('one two', 6)).toEqual(['one', 'two']);
  });

  it('inside a word only when the word is longer than a line', () => {
    expect(textLines('a abcdefgh i', 3)).toEqual(['a', 'abc', 'def', 'gh', 'i']);
  });

  it('whatever spaces and line ends stand between the words', () => {
    expect(textLines('  one\n\n two\t', 20)).toEqual(['one two']);
  });

  it('of which an empty text has none', () => {
    expect(textLines('', 10)).toEqual([]);
    expect(textLines(' \n', 10)).toEqual([]);
  });
});

describe('rows and cells stand in columns', () => {
  it('a remark keeps its distance from a long value, and nothing trails', () => {
    expect(textRow('Length', '8,000 ft', 'given')).toBe(
      `  Length${' '.repeat(18)}8,000 ft${' '.repeat(18)}given`,
    );
    expect(textRow('Length', 'x'.repeat(40), 'given')).toContain('x  given');
    expect(textRow('Length', '8,000 ft').endsWith('ft')).toBe(true);
  });

  it('values are set to the right of their columns', () => {
    expect(textCells('NM', [1, '20'], 4)).toBe(`  NM${' '.repeat(22)}   1  20`);
    expect(textCells('NM', [], 4).trim()).toBe('NM');
  });
});
