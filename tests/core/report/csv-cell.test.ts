import { describe, expect, it } from 'vitest';
import { csvCell } from '../../../core/report/csv-cell.ts';

describe('a cell', () => {
  it('is quoted where it has to be', () => {
    expect([null, 'plain', 'a,b', 'say "no"', 'two\nlines', 0.5].map(csvCell)).toEqual([
      '',
      'plain',
      '"a,b"',
      '"say ""no"""',
      '"two\nlines"',
      '0.5',
    ]);
  });

  it('is no formula, and a number below 0 stays one', () => {
    expect(['=1+1', '+1', '-1', '@sum', '\tx', '＝1', 'a=b', -1].map(csvCell)).toEqual([
      "'=1+1",
      "'+1",
      "'-1",
      "'@sum",
      "'\tx",
      "'＝1",
      'a=b',
      '-1',
    ]);
  });
});
