import { describe, expect, it } from 'vitest';
import type { DebriefDescent } from '../../../core/debrief/debrief.ts';
import type { InstructorFlew } from '../../../core/report/who-flew.ts';
import { descentLines } from '../../../core/report/descent-lines.ts';

type Stretch = DebriefDescent['stretches'][number];

function stretch(minute: number, fromFt: number, toFt: number): Stretch {
  const at = (second: string) => `2026-03-14T09:${String(minute).padStart(2, '0')}:${second}Z`;
  return {
    startUtc: at('10'),
    endUtc: at('31'),
    fromFt,
    toFt,
    gainedFt: toFt - fromFt,
    meanExcessFpm: (-60 * (toFt - fromFt)) / 21,
  };
}

const lines = (stretches: readonly Stretch[], steepS = 0, instructorFlew: InstructorFlew = []) =>
  descentLines({ stretches, steepS } as unknown as DebriefDescent, instructorFlew, '');

describe('the descent in words', () => {
  it('says how far the aircraft came back to the path, left it, crossed it and went on', () => {
    expect(lines([stretch(12, -60, 3)])).toEqual([
      '09:12:10 to 09:12:31: 60 ft low made up, sinking 180 ft/min less than needed.',
    ]);
    expect(lines([stretch(12, 60, 0)])).toEqual([
      '09:12:10 to 09:12:31: 60 ft high made up, sinking 171 ft/min more than needed.',
    ]);
    expect(lines([stretch(12, -4, 66)])[0]).toContain('from the path to 66 ft high, sinking 200 ft/min less');
    expect(lines([stretch(12, 40, -30)])[0]).toContain(
      'from 40 ft high to 30 ft low, sinking 200 ft/min more',
    );
    expect(lines([stretch(12, -30, -100)])[0]).toContain(
      'from 30 ft low to 100 ft low, sinking 200 ft/min more',
    );
  });

  it('keeps to the three that went farthest, in the order flown, and to how steep it was', () => {
    const flown = [stretch(10, 0, 50), stretch(11, 50, -60), stretch(12, -60, -15), stretch(13, -15, 70)];
    const found = lines([...flown, stretch(14, 70, 31)], 12.4);
    expect(found.map((line) => line.slice(0, 8))).toEqual(['09:10:10', '09:11:10', '09:13:10', 'Sank mor']);
    expect(found[3]).toBe('Sank more than 300 ft/min faster than needed for 12 s in all.');
  });

  it('says nothing of what a needle hardly shows', () => {
    expect(lines([stretch(12, 0, 39)], 0.4)).toEqual([]);
    expect(lines([stretch(12, 0, 40)])).toHaveLength(1);
  });

  it('has four lines at most, also of figures that no pilot would like', () => {
    const found = lines([stretch(10, 1234, -1234), stretch(11, -1234, -2345), stretch(12, 0, 2345)], 4000);
    expect(found).toHaveLength(4);
    for (const line of found) expect(line.length).toBeLessThanOrEqual(100);
  });
});
