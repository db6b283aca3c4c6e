import { fewestForInterval, kendallSide, theilSen, type RobustSlope } from '../numeric/theil-sen.ts';
import type { Change, LessonCell, ProgressLine, Trend } from './progress.ts';

/** Of an interval, and of all that is called a sure change in a record. */
export const CONFIDENCE = 0.95;
/** Below either of these nothing is said of a trend. */
const FEWEST_APPROACHES = 6;
const FEWEST_LESSONS = 3;

type Cells = readonly Pick<LessonCell, 'value' | 'approaches'>[];

/** Whether there is enough of a line to give a slope. */
export function isEnough(cells: Cells): boolean {
  const { approaches, lessons } = behind(cells);
  return approaches >= FEWEST_APPROACHES && lessons >= FEWEST_LESSONS;
}

/**
 * How a line goes from lesson to lesson, one value for each: the approaches of a day share its wind and its aircraft,
 * and as so many values of their own they would claim more than they know.
 *
 * @param lines how many trends the record tells: of each 20 lines without a change one would be called changed by its
 *   own interval, so that only a change that an interval of so much more confidence shows as well (Bonferroni) is sure
 */
export function trendOf(cells: Cells, better: ProgressLine['better'], lines: number): Trend {
  const counts = behind(cells);
  const nothing = { ...counts, slopePerLesson: null, interval: null };
  if (!isEnough(cells)) return { change: 'too-few', ...nothing, why: tooFew(counts) };
  const points = cells.flatMap(({ value }, lesson) => (value === null ? [] : [{ lesson, value }]));
  const slopeAt = (confidence: number) =>
    theilSen(
      points.map(({ lesson }) => lesson),
      points.map(({ value }) => value),
      confidence,
    );
  const { slope, interval: found } = slopeAt(CONFIDENCE);
  const interval = isBlind(found, points) ? null : found;
  const values = points.map(({ value }) => value);
  const sideAt = (confidence: number) => {
    const there = slopeAt(confidence).interval;
    const side = sideOf(there);
    return side === 0 && isTouching(there) ? kendallSide(values, confidence) : side;
  };
  const side = sideAt(CONFIDENCE);
  const isSure = side !== 0 && sideAt(1 - (1 - CONFIDENCE) / lines) === side;
  const isUntold = interval === null && side === 0;
  return {
    change: changeTo(better === 'higher' ? side : -side, isSure),
    ...counts,
    slopePerLesson: slope,
    interval,
    why: isUntold ? noInterval(counts.lessons) : null,
  };
}

/** Most pairs of lessons are alike though not all are: the interval is then 0 alone, and knows less than it says. */
function isBlind(interval: RobustSlope['interval'], points: readonly { readonly value: number }[]): boolean {
  const isNothing = interval !== null && interval.low === 0 && interval.high === 0;
  return isNothing && points.some(({ value }) => value !== points[0]!.value);
}

/** On which side of 0 all of an interval lies: 1, −1, or 0 where on neither. */
function sideOf(interval: RobustSlope['interval']): number {
  if (interval === null) return 0;
  if (interval.low > 0) return 1;
  return interval.high < 0 ? -1 : 0;
}

/** Whether an end of it is 0, as where most of the pairs of lessons are equal: it then says less than the lessons do. */
function isTouching(interval: RobustSlope['interval']): boolean {
  return interval !== null && (interval.low === 0 || interval.high === 0);
}

function changeTo(gain: number, isSure: boolean): Change {
  if (gain === 0) return 'not-sure';
  const change = gain > 0 ? 'better' : 'worse';
  return isSure ? change : `perhaps-${change}`;
}

function behind(cells: Cells): { approaches: number; lessons: number } {
  const valued = cells.filter(({ value }) => value !== null);
  return {
    approaches: valued.reduce((sum, { approaches }) => sum + approaches, 0),
    lessons: valued.length,
  };
}

function tooFew({ approaches, lessons }: { approaches: number; lessons: number }): string {
  return (
    `Too few to tell: ${approaches} ${approaches === 1 ? 'approach' : 'approaches'} in ` +
    `${lessons} ${lessons === 1 ? 'lesson' : 'lessons'}; ${FEWEST_APPROACHES} in ${FEWEST_LESSONS} are needed.`
  );
}

function noInterval(lessons: number): string {
  const needed = fewestForInterval(CONFIDENCE);
  if (lessons < needed) return `${lessons} lessons are too few to be sure; ${needed} are needed.`;
  return 'Too many lessons have the same figure for more to be told.';
}
