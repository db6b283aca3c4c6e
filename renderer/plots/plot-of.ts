import { scaleLinear } from 'd3-scale';
import { median } from '../../core/numeric/median.ts';
import type { LessonCell, Progress, ProgressLine, ProgressUnit } from '../../core/progress/progress.ts';

/** One line of a record as it is drawn, on paper and on the screen: lessons from left to right. */
export interface LessonPlot {
  readonly points: readonly LessonPoint[];
  /** From the lowest to the highest value that the axis shows. */
  readonly domain: readonly [number, number];
  readonly ticks: readonly number[];
  /** Of a value on the axis. */
  readonly words: (value: number) => string;
  /** The robust slope through the middle of the points; null where no change is told. */
  readonly trend: readonly [from: TrendEnd, to: TrendEnd] | null;
}

interface TrendEnd {
  readonly lesson: number;
  readonly value: number;
}

export interface LessonPoint {
  /** From 1. */
  readonly lesson: number;
  readonly date: string;
  readonly value: number | null;
  readonly cell: LessonCell;
}

/** @param lessons of the record that the line belongs to */
export function plotOf(line: ProgressLine, lessons: Progress['lessons']): LessonPlot {
  const points = line.lessons.map((cell, i) => ({
    lesson: i + 1,
    date: lessons[i]!.date,
    value: cell.value,
    cell,
  }));
  const values = points.flatMap(({ value }) => (value === null ? [] : [value]));
  return {
    points,
    ...axisOf(line.unit, values),
    words: (value) => valueWords(value, line.unit),
    trend: trendOf(line, points),
  };
}

/** A value with as many digits as it is read with, and its unit where that is short. */
export function valueWords(value: number, unit: ProgressUnit): string {
  if (unit === 'share') return `${Math.round(value * 100)}\u00a0%`;
  if (unit === 'level') return String(Math.round(value * 10) / 10);
  return unit === 'kt' ? `${value.toFixed(1)}\u00a0kt` : value.toFixed(2);
}

/** A difference of two values, with its sign where it is not rounded to nothing. */
export function differenceWords(difference: number, unit: ProgressUnit): string {
  const size = sizeWords(Math.abs(difference), unit);
  if (!/[1-9]/.test(size)) return size;
  return `${difference < 0 ? '−' : '+'}${size}`;
}

function sizeWords(size: number, unit: ProgressUnit): string {
  if (unit === 'share') return `${Math.round(size * 100)}\u00a0points`;
  return unit === 'level' ? size.toFixed(2) : valueWords(size, unit);
}

/** An axis that holds these values: what it shows, and where it is marked. */
export function axisOf(
  unit: ProgressUnit,
  values: readonly number[],
): { readonly domain: readonly [number, number]; readonly ticks: readonly number[] } {
  const domain = domainOf(unit, values);
  return { domain, ticks: ticksOf(unit, domain) };
}

/** What the axis shows: all of a share or a level, and an RMS from none of it. */
function domainOf(unit: ProgressUnit, values: readonly number[]): readonly [number, number] {
  if (unit === 'share') return [0, 1];
  if (unit === 'level') return [1, 5];
  const most = Math.max(LEAST[unit], ...values);
  return scaleLinear([0, most], [0, 1]).nice(4).domain() as [number, number];
}

/** So much at least is shown, so that little does not look like much. Ours. */
const LEAST = { 'full scale': 0.4, kt: 8 } as const;

function ticksOf(unit: ProgressUnit, domain: readonly [number, number]): number[] {
  if (unit === 'level') return [1, 2, 3, 4, 5];
  return scaleLinear(domain, [0, 1]).ticks(4);
}

function trendOf({ trend }: ProgressLine, points: readonly LessonPoint[]): LessonPlot['trend'] {
  const { change, slopePerLesson: slope } = trend;
  // Where most lessons are alike the middle slope is none, though a change is told.
  if (slope === null || slope === 0 || change === 'not-sure') return null;
  const known = points.flatMap(({ lesson, value }) => (value === null ? [] : [{ lesson, value }]));
  const middle = median(known.map(({ lesson, value }) => value - slope * lesson));
  const at = (lesson: number) => ({ lesson, value: middle + slope * lesson });
  return [at(known[0]!.lesson), at(known.at(-1)!.lesson)];
}
