import { firstCrossing } from '../approach/hold.ts';
import { at, type Flown } from '../approach/flown.ts';
import { firstAfter, type Span } from '../numeric/polyline.ts';

/**
 * When a column was first at or below a level within a span, between fixes; its start when it was so already, null
 * when it never was.
 */
export function fallsToS(
  flown: Flown,
  { startS, endS }: Span,
  column: Float64Array,
  level: number,
): number | null {
  if (at(flown, column, startS) <= level) return startS;
  const { timeS } = flown.track;
  const stretch = {
    first: Math.max(0, firstAfter(timeS, startS) - 1),
    last: Math.min(firstAfter(timeS, endS), timeS.length - 1),
  };
  const crossingS = firstCrossing(flown.track, stretch, column, level, { afterS: startS });
  return crossingS !== null && crossingS <= endS ? crossingS : null;
}
