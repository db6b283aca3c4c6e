import type { Polyline, Span } from '../numeric/polyline.ts';
import { halved } from './halved.ts';
import type { Limit } from './standard.ts';
import { within } from './within.ts';

type Sides = Pick<Limit, 'lower' | 'upper'>;

/** A gap this short, with both ends within half the limit, hides nothing (design, section 10). */
const HARMLESS_GAP_S = 10;

/** Unrecorded seconds in which the value may have been beyond its limit. */
export function hiddenS(parts: readonly Polyline[], counted: readonly Span[], limit: Sides): number {
  let hidden = 0;
  for (const { startS, endS } of counted) {
    let fromS = startS;
    let before: number | null = null;
    const inside = parts.filter(({ timeS }) => timeS[0]! >= startS && timeS.at(-1)! <= endS);
    for (const { timeS, value } of inside) {
      hidden += gapS(timeS[0]! - fromS, before, value[0]!, limit);
      fromS = timeS.at(-1)!;
      before = value.at(-1)!;
    }
    hidden += gapS(endS - fromS, before, null, limit);
  }
  return hidden;
}

function gapS(lengthS: number, before: number | null, after: number | null, limit: Sides): number {
  const wellInside = [before, after].every((value) => value !== null && within(halved(limit, 0), value));
  return lengthS <= HARMLESS_GAP_S && wellInside ? 0 : Math.max(0, lengthS);
}
