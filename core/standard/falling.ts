import type { Flown } from '../approach/flown.ts';
import type { Column } from '../numeric/lazy-column.ts';
import { firstAfter, valueAt, type Span } from '../numeric/polyline.ts';

/**
 * When a column was first at or below a level within a span, between fixes; its start when it was so already, null
 * when it never was. Passed within a gap, it is told by the first fix beyond.
 */
export function fallsToS(
  { track }: Pick<Flown, 'track'>,
  { startS, endS }: Span,
  column: Column,
  level: number,
): number | null {
  const { gapLimitS } = track;
  const begin = Math.max(0, firstAfter(track.timeS, startS) - 1);
  const end = firstAfter(track.timeS, Math.max(startS, endS)) + 1;
  const timeS = track.timeS.subarray(begin, end);
  const values = column.slice(begin, Math.min(end, track.count));
  if (valueAt(timeS, values, startS, gapLimitS) <= level) return startS;
  const first = firstAfter(timeS, startS);
  for (let i = first; i < timeS.length && (i === first || timeS[i - 1]! < endS); i++) {
    const after = values[i]!;
    if (!(after <= level)) continue;
    const before = i > 0 ? values[i - 1]! : NaN;
    const stepS = i > 0 ? timeS[i]! - timeS[i - 1]! : Infinity;
    const isSeen = before > level && stepS <= gapLimitS;
    const fellS = isSeen ? timeS[i]! - ((level - after) / (before - after)) * stepS : timeS[i]!;
    return fellS <= endS ? Math.max(startS, fellS) : null;
  }
  return null;
}
