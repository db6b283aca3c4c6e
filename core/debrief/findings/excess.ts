import type { DescentSecond } from '../../approach/descent.ts';
import type { Span } from '../../numeric/polyline.ts';
import type { Asked } from './asked.ts';

/** Sink held and needed over a span, ft/min, means over its recorded seconds; null where nothing was recorded. */
export function sinkOver(asked: Asked, span: Span): { heldFpm: number; neededFpm: number } | null {
  const within = secondsIn(asked, span);
  if (within.length === 0) return null;
  const mean = (of: (second: DescentSecond) => number) =>
    within.reduce((sum, one) => sum + of(one), 0) / within.length;
  return { heldFpm: mean(({ heldFpm }) => heldFpm), neededFpm: mean(({ neededFpm }) => neededFpm) };
}

/** How many seconds of a span sank so much faster than needed, and the most that they did. */
export function excessSeconds(
  asked: Asked,
  span: Span,
  moreFpm: number,
): { seconds: number; mostFpm: number } {
  const excess = secondsIn(asked, span).map(({ heldFpm, neededFpm }) => heldFpm - neededFpm);
  const steep = excess.filter((fpm) => fpm > moreFpm);
  return { seconds: steep.length, mostFpm: Math.max(0, ...steep) };
}

export function secondsIn({ seconds }: Asked, span: Span): DescentSecond[] {
  return seconds?.within(span) ?? [];
}
