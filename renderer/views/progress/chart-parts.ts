import type { LessonPlot } from '../../plots/plot-of.ts';

/** How the charts of progress are drawn, all in one manner. */
export const AXIS = {
  tickLine: false,
  stroke: 'var(--line)',
  tick: { fill: 'var(--quiet)', fontSize: 11 },
} as const;

export const DOT = { r: 3.5, fill: 'var(--sheet)', stroke: 'var(--series)', strokeWidth: 1.75 } as const;

/** The lessons from left to right, each by its number: half a lesson of room at both ends. */
export function lessonAxis(dataKey: string, numbers: readonly number[]) {
  return {
    ...AXIS,
    dataKey,
    type: 'number',
    domain: [0.5, (numbers.at(-1) ?? 0) + 0.5],
    ticks: [...numbers],
    interval: 'equidistantPreserveStart',
    height: 20,
  } as const;
}

export function valueAxis(
  { domain, ticks }: Pick<LessonPlot, 'domain' | 'ticks'>,
  words: LessonPlot['words'],
) {
  return {
    ...AXIS,
    axisLine: false,
    domain: [...domain],
    ticks: [...ticks],
    tickFormatter: words,
    interval: 0,
    width: 50,
    padding: { top: 6, bottom: 4 },
  } as const;
}

export const GRID = { vertical: false, stroke: 'var(--line)', strokeWidth: 0.5 } as const;
