import { assert, property, array, constantFrom, integer, string, tuple } from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readJson } from '../../../core/json/json-text.ts';

const accepts = (text: string): boolean => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};

const nested = (depth: number) => '['.repeat(depth) + ']'.repeat(depth);

describe('JSON is told from what is not JSON', () => {
  it.each([
    ['{"a": 1,}', 1, 9, 'a key in double quotes was expected, it has "}"'],
    ['{\n  "a": 1\n  "b": 2\n}', 3, 3, 'a comma or } was expected, it has "\\""'],
    ['{\r\n  a: 1\r\n}', 2, 3, 'a key in double quotes was expected, it has "a"'],
    ['{"a" 1}', 1, 6, 'a colon was expected, it has "1"'],
    ['{"a": 3,5}', 1, 9, 'a key in double quotes was expected, it has "5"'],
    ['{"a": .5}', 1, 7, 'a value was expected, it has "."'],
    ['{"a": 01}', 1, 8, 'a comma or } was expected, it has "1"'],
    ['[1 2]', 1, 4, 'a comma or ] was expected, it has "2"'],
    ['{"a": "x\ny"}', 1, 7, 'a value was expected, it has "\\""'],
    ['{"a": {}', 1, 9, 'a comma or } was expected, the file ends'],
    ['{} x', 1, 4, 'nothing more was expected, it has "x"'],
    ['', 1, 1, 'a value was expected, the file ends'],
    ['😀', 1, 1, 'a value was expected, it has "😀"'],
  ])('%j stops at line %i, column %i', (text, line, column, problem) => {
    expect(readJson(text)).toEqual({ ok: false, line, column, problem });
  });

  it('agrees with the engine’s own parser on texts with a slip in them', () => {
    const whole = '{"a":[1,-2.5e+3,true,null,"x\\u00e9\\n"],"b":{"c":{}, "d":[]}}';
    const slips = array(
      tuple(integer({ min: 0, max: whole.length }), constantFrom(...'{}[]",:0.e-\\ntu\t', '')),
      {
        minLength: 1,
        maxLength: 3,
      },
    );
    assert(
      property(slips, (changes) => {
        let text = whole;
        for (const [at, put] of changes)
          text = text.slice(0, at) + put + text.slice(at + (put === '' ? 1 : 0));
        expect(readJson(text).ok).toBe(accepts(text));
      }),
      { seed: 20, numRuns: 3000 },
    );
    assert(
      property(string(), (text) => {
        expect(readJson(text).ok).toBe(accepts(text));
      }),
      { seed: 21, numRuns: 500 },
    );
  });

  it('brackets 32 levels deep are read, deeper ones refused before they can exhaust anything', () => {
    expect(readJson(nested(33)).ok).toBe(true);
    expect(readJson(nested(34))).toMatchObject({ ok: false, column: 34 });
    expect(readJson('['.repeat(100_000))).toMatchObject({ ok: false, column: 34 });
  });
});

describe('everything that was read keeps its place', () => {
  const text = '\uFEFF{\n "a": 1,\n "b": {\n  "c": [\n   {"d": 2}\n  ]\n }\n}';

  it('a key has its line, and what is missing has its nearest parent’s', () => {
    const read = readJson(text);
    if (!read.ok) throw new Error(read.problem);
    expect(read.value).toEqual({ a: 1, b: { c: [{ d: 2 }] } });
    expect(read.lineOf(['a'])).toBe(2);
    expect(read.lineOf(['b', 'c'])).toBe(4);
    expect(read.lineOf(['b', 'c', 0, 'd'])).toBe(5);
    expect(read.lineOf(['b', 'nothing', 'here'])).toBe(3);
    expect(read.lineOf(['nothing'])).toBe(1);
    expect(read.lineOf([])).toBe(1);
  });

  it('a key given twice is told, also when it is written in two ways', () => {
    const read = readJson('{"a":{"x":1,"\\u0078":2},"b":1,"b":2,"b":3}');
    expect(read.ok && read.repeated).toEqual([['a', 'x'], ['b'], ['b']]);
  });

  it('the same key in two groups is no repetition', () => {
    const read = readJson('{"a":{"x":1},"b":{"x":2},"c":[{"x":1},{"x":2}]}');
    expect(read.ok && read.repeated).toEqual([]);
  });
});
