import { describe, expect, it } from 'vitest';
import { CharCodes } from '../../../core/log/char-codes.ts';
import { Row } from '../../../core/log/row.ts';

const COMMA = ','.charCodeAt(0);

function cut(text: string, from = 0, to = text.length): Row {
  const row = new Row();
  row.cut(text, new CharCodes().of(text), from, to, COMMA);
  return row;
}

describe('a row that is cut out of a text', () => {
  it('holds the cells of its line and nothing of the lines around', () => {
    const row = cut('1,2\n3,,-4.5\n6,7\n', 4, 11);
    expect(row.cells()).toEqual(['3', '', '-4.5']);
    expect([0, 1, 2, 3].map((i) => row.number(i, '.'))).toEqual([3, NaN, -4.5, NaN]);
    expect(row.text(3)).toBe('');
  });

  it('has one cell where no delimiter stands, also an empty one', () => {
    expect(cut('12').cells()).toEqual(['12']);
    expect(cut('').cells()).toEqual(['']);
  });

  it('reads numbers beside letters that are not ASCII, each in its own place', () => {
    const row = cut('Höhe 3°,12.5,🛩,−7,é8');
    expect(row.cells()).toEqual(['Höhe 3°', '12.5', '🛩', '−7', 'é8']);
    expect([0, 1, 2, 3, 4].map((i) => row.number(i, '.'))).toEqual([NaN, 12.5, NaN, -7, NaN]);
  });

  it('takes cells that were cut elsewhere, with a delimiter in them', () => {
    const row = cut('9,9,9');
    row.take(['a,b', '1', 'ü2', ' 3 ']);
    expect(row.cells()).toEqual(['a,b', '1', 'ü2', ' 3 ']);
    expect([1, 2, 3].map((i) => row.number(i, '.'))).toEqual([1, NaN, 3]);
  });
});

describe('the codes of a text', () => {
  it('are those of its characters, and 255 for what is no byte', () => {
    const codes = new CharCodes();
    expect([...codes.of('A,1').subarray(0, 3)]).toEqual([65, 44, 49]);
    expect([...codes.of('é−1').subarray(0, 3)]).toEqual([233, 255, 49]);
    expect([...codes.of('Z').subarray(0, 1)]).toEqual([90]);
  });

  it('never hold a digit or a delimiter that does not stand in the text, whatever the text', () => {
    const codes = new CharCodes();
    for (let code = 128; code < 0x10000; code++) {
      const [found] = codes.of(String.fromCharCode(code));
      if (found! < 128) throw new Error(`U+${code.toString(16)} is taken for ${found}`);
    }
  });
});
