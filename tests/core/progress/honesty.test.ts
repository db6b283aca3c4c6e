import { describe, expect, it } from 'vitest';
import type { Progress } from '../../../core/progress/progress.ts';
import { seededRandom, type Random } from '../../support/flight/random.ts';
import { lessonsOf, lineOf, recordOf } from './made-up.ts';

const STUDENTS = 400;
const APPROACHES = 3;
/** What a true 5 % of so many students may be found as: three standard deviations more or less. */
const CHANCE = 3 * Math.sqrt((0.05 * 0.95) / STUDENTS);
/** Of the RMS: how days differ, and how the approaches of a day do. */
const BETWEEN_DAYS = 0.04;
const WITHIN_A_DAY = 0.06;

/**
 * A student made of numbers: every figure of an approach is its day's and its own, and falls or rises by so much a
 * lesson.
 */
function student(chance: Random, lessons: number, rmsPerLesson: number): Progress {
  const days = Array.from({ length: lessons + 1 }, () => chance.gaussian());
  const made = lessonsOf(lessons, APPROACHES, (lesson) => {
    const off = (between: number, within: number) => days[lesson]! * between + chance.gaussian() * within;
    const verdict = () =>
      days[lesson]! * 0.5 + chance.gaussian() > 0.5 ? ('not-met' as const) : ('met' as const);
    const level = Math.min(5, Math.max(1, Math.round(3 + off(0.6, 0.8))));
    return {
      glidepathRms: Math.max(
        0,
        (rmsPerLesson < 0 ? 0.6 : 0.3) + rmsPerLesson * lesson + off(BETWEEN_DAYS, WITHIN_A_DAY),
      ),
      airspeed: { mean: 90 + off(2, 3), standardDeviation: Math.abs(3 + off(0.5, 1)) },
      outsideNm: Math.min(100, Math.max(0, 10 + off(6, 8))) / 20,
      verdicts: { stability: verdict(), minimums: verdict() },
      level: [level, level, level],
    };
  });
  return recordOf(made);
}

function shareOf(count: (record: Progress) => boolean, lessons: number, rmsPerLesson: number): number {
  const chance = seededRandom(`progress/${lessons}/${rmsPerLesson}`);
  let found = 0;
  for (let i = 0; i < STUDENTS; i++) if (count(student(chance, lessons, rmsPerLesson))) found++;
  return found / STUDENTS;
}

const glidepath = (record: Progress) => lineOf(record, 'glidepath-final').trend;
const isSure = ({ lines }: Progress) =>
  lines.some(({ trend }) => trend.change === 'better' || trend.change === 'worse');

describe('a record of chance', () => {
  // Of all lines together: whoever reads a record reads every line of it.
  it.each([3, 5, 8, 16])('claims no change in 95 % of students over %i lessons without one', (lessons) =>
    expect(shareOf(isSure, lessons, 0)).toBeLessThanOrEqual(0.05),
  );

  it.each([5, 10, 16])(
    'calls one line perhaps changed in 5 % of students at most, over %i lessons',
    (lessons) => {
      expect(shareOf((record) => glidepath(record).change !== 'not-sure', lessons, 0)).toBeLessThanOrEqual(
        0.05 + CHANCE,
      );
    },
  );

  it('finds an RMS that falls by 0.03 of full scale a lesson over 14 lessons in 90 % of students', () =>
    expect(shareOf((record) => glidepath(record).change === 'better', 14, -0.03)).toBeGreaterThanOrEqual(
      0.9,
    ));

  it('finds at least a perhaps of it over 10 lessons, and of 0.02 a lesson over 12', () => {
    const isFound = (record: Progress) => /better/.test(glidepath(record).change);
    expect(shareOf(isFound, 10, -0.03)).toBeGreaterThanOrEqual(0.9);
    expect(shareOf(isFound, 12, -0.02)).toBeGreaterThanOrEqual(0.9);
  });

  it('finds one that rises as well, and never takes the one for the other', () => {
    expect(shareOf((record) => glidepath(record).change === 'worse', 14, 0.03)).toBeGreaterThanOrEqual(0.9);
    expect(shareOf((record) => /better/.test(glidepath(record).change), 14, 0.03)).toBe(0);
  });

  it('holds the true slope in its interval in 95 % of students', () => {
    const isHeld = (record: Progress) => {
      const { low, high } = glidepath(record).interval!;
      return low <= -0.01 && -0.01 <= high;
    };
    expect(shareOf(isHeld, 10, -0.01)).toBeGreaterThanOrEqual(0.95 - CHANCE);
  });
});
