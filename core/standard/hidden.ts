import type { Polyline, Span } from '../numeric/polyline.ts';
import { halved } from './halved.ts';
import type { Limit } from './standard.ts';
import { verdictWithin } from './within.ts';

type Sides = Pick<Limit, 'lower' | 'upper'>;

/** A gap this short, with both ends within half the limit, hides nothing (design, section 10). */
const HARMLESS_GAP_S = 10;

/** A value beside a gap, and how far off it may be. */
interface End {
  readonly value: number;
  readonly halfWidth: number;
}

/**
 * Unrecorded seconds in which the value may have been beyond its limit. `halfWidths` stand in lines of the same times
 * as the parts, or are empty where the value is what it says.
 */
export function hiddenS(
  parts: readonly Polyline[],
  counted: readonly Span[],
  limit: Sides,
  halfWidths: readonly Polyline[],
): number {
  let hidden = 0;
  for (const { startS, endS } of counted) {
    let fromS = startS;
    let before: End | null = null;
    for (const [k, { timeS, value }] of parts.entries()) {
      if (timeS[0]! < startS || timeS.at(-1)! > endS) continue;
      const half = halfWidths[k]?.value;
      hidden += gapS(timeS[0]! - fromS, before, { value: value[0]!, halfWidth: half?.[0] ?? 0 }, limit);
      fromS = timeS.at(-1)!;
      before = { value: value.at(-1)!, halfWidth: half?.at(-1) ?? 0 };
    }
    hidden += gapS(endS - fromS, before, null, limit);
  }
  return hidden;
}

function gapS(lengthS: number, before: End | null, after: End | null, limit: Sides): number {
  const half = halved(limit, 0);
  const wellInside = [before, after].every(
    (end) => end !== null && verdictWithin(half, end.value, end.halfWidth) === 'met',
  );
  return lengthS <= HARMLESS_GAP_S && wellInside ? 0 : Math.max(0, lengthS);
}
