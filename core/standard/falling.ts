import { at, type Flown } from '../approach/flown.ts';
import { firstAfter, type Span } from '../numeric/polyline.ts';

/**
 * When a column was first at or below a level within a span, between fixes; its start when it was so already, null
 * when it never was. Passed within a gap, it is told by the first fix beyond.
 */
export function fallsToS(
  flown: Flown,
  { startS, endS }: Span,
  column: Float64Array,
  level: number,
): number | null {
  if (at(flown, column, startS) <= level) return startS;
  const { timeS, gapLimitS } = flown.track;
  const first = firstAfter(timeS, startS);
  for (let i = first; i < timeS.length && (i === first || timeS[i - 1]! < endS); i++) {
    const after = column[i]!;
    if (!(after <= level)) continue;
    const before = i > 0 ? column[i - 1]! : NaN;
    const stepS = i > 0 ? timeS[i]! - timeS[i - 1]! : Infinity;
    const isSeen = before > level && stepS <= gapLimitS;
    const fellS = isSeen ? timeS[i]! - ((level - after) / (before - after)) * stepS : timeS[i]!;
    return fellS <= endS ? Math.max(startS, fellS) : null;
  }
  return null;
}
