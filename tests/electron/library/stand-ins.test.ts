import { describe, expect, it } from 'vitest';
import { StandIns } from '../../../electron/library/stand-ins.ts';

const standIns = new StandIns([
  ['Wren', 'Student 1'],
  ['Wren Lee', 'Student 2'],
  ['José Lark', 'Student 3'],
  ['QQ-XYZ', 'Aircraft 1'],
  ['2', 'Aircraft 2'],
  ['(old) trainer', 'Aircraft 3'],
  ['track 7 of may.csv', 'log 1.csv'],
  ['track 70 of may.csv', 'log 2.csv'],
]);

describe('what stands for names in a text', () => {
  it.each([
    ['as agreed with Wren Lee', 'as agreed with Student 2'],
    ['as agreed with Wren', 'as agreed with Student 1'],
    ['WREN, wren lee; Wren', 'Student 1, Student 2; Student 1'],
    ['Wrens and xWren stay', 'Wrens and xWren stay'],
    ['JOSÉ LARK’s', 'Student 3’s'],
    ['in qq-xyz today', 'in Aircraft 1 today'],
    // What stands for one name may hold another's.
    ['2 flew', 'Aircraft 2 flew'],
    ['Wren Lee in 2', 'Student 2 in Aircraft 2'],
    ['the (old) trainer', 'the Aircraft 3'],
    ['trainer', 'trainer'],
    ['track 70 of may.csv, track 7 of may.csv', 'log 2.csv, log 1.csv'],
    ['', ''],
  ])('%j is written %j', (text, written) => {
    expect(standIns.in(text)).toBe(written);
  });

  it('takes no longer for a text because there are more names', () => {
    const text = 'a track along the ground track of may, and no log. '.repeat(200);
    const names = (count: number) =>
      new StandIns(Array.from({ length: count }, (_, i) => [`track ${i + 1e6} of may.csv`, `log ${i}`]));
    const [few, many] = [names(10), names(20_000)];
    const ms = (one: StandIns) => {
      const times = Array.from({ length: 5 }, () => {
        const from = performance.now();
        one.in(text);
        return performance.now() - from;
      });
      return Math.min(...times);
    };
    ms(few);
    // A look at each of the names would make it 2,000 times as long.
    expect(ms(many)).toBeLessThan(50 * ms(few));
  });
});
