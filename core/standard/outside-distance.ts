import type { Excursion } from '../approach/excursions.ts';
import { clip, type Polyline, type Span } from '../numeric/polyline.ts';
import type { TimedQuestion } from './timed-criterion.ts';

/** Nautical miles along all lines of a distance flown. */
export function lengthNm(flownNm: readonly Polyline[]): number {
  return flownNm.reduce((sum, { value }) => sum + value[value.length - 1]! - value[0]!, 0);
}

/** Nautical miles flown in the very seconds that excursions were beyond their limit. */
export function outsideDistanceNm(question: TimedQuestion, excursions: readonly Excursion[]): number {
  const { parts, flownNm } = question;
  return excursions.reduce((sum, excursion) => {
    const flown = during(flownNm, excursion);
    // One that the rules make is outside all along, as far as it was recorded.
    const nm = excursion.untilEstablished
      ? lengthNm(flown)
      : beyondNm(during(parts, excursion), flown, question, excursion);
    return sum + nm;
  }, 0);
}

function during(lines: readonly Polyline[], span: Span): Polyline[] {
  return lines.flatMap(({ timeS, value }) => clip(timeS, value, span, Infinity));
}

/** Of the lines of one excursion, what lies beyond the limit on its side: it may have come back for a moment. */
function beyondNm(
  parts: readonly Polyline[],
  flownNm: readonly Polyline[],
  { limit }: Pick<TimedQuestion, 'limit'>,
  { side }: Excursion,
): number {
  const sign = side === 'above' ? 1 : -1;
  const edge = sign * (side === 'above' ? limit.upper! : limit.lower!);
  let nm = 0;
  for (const [k, { value }] of parts.entries()) {
    const flown = flownNm[k]!.value;
    for (let i = 1; i < value.length; i++)
      nm += shareBeyond(sign * value[i - 1]!, sign * value[i]!, edge) * (flown[i]! - flown[i - 1]!);
  }
  return nm;
}

/** Share of the line between two values that lies above an edge. */
function shareBeyond(a: number, b: number, edge: number): number {
  const high = Math.max(a, b);
  const low = Math.min(a, b);
  if (high <= edge) return 0;
  return low >= edge ? 1 : (high - edge) / (high - low);
}
