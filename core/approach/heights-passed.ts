import type { Span } from '../numeric/polyline.ts';
import type { Track } from '../track/track.ts';
import type { Moments } from './approach-events.ts';
import { after } from './established.ts';
import { decisionOf } from './final.ts';
import type { UnseenPassage } from './flown-approach.ts';
import { at, type Flown } from './flown.ts';
import { firstCrossing, type Stretch } from './hold.ts';
import type { Pass } from './passes.ts';

/** Gates and decision altitude on the way down final: as they were passed, or while nothing was recorded. */
export type HeightsPassed = Pick<Moments, 'gates' | 'decision' | 'unseen'>;

/**
 * Heights first descended through after final began; one that the aircraft was below by then does not apply.
 *
 * @param beganS when final began; null when it never did
 * @param gateDatumFt the elevation above which gates are counted, feet above mean sea level
 */
export function heightsPassed(
  flown: Flown,
  pass: Pass,
  beganS: number | null,
  gateDatumFt: number,
): HeightsPassed {
  if (beganS === null) return { gates: [], decision: null, unseen: [] };
  const { altitudeFt: decisionFt, assumed } = decisionOf(flown);
  const heights = [
    { kind: 'gate-1000', altitudeFt: gateDatumFt + 1000 },
    { kind: 'gate-500', altitudeFt: gateDatumFt + 500 },
    { kind: 'decision-altitude', altitudeFt: decisionFt },
  ] as const;
  const stretch = after(flown, { first: pass.first, last: pass.until }, beganS);
  const gates: Moments['gates'][number][] = [];
  const unseen: UnseenPassage[] = [];
  let decision: Moments['decision'] = null;
  for (const { kind, altitudeFt } of heights) {
    const passed = descentThrough(flown, stretch, beganS, altitudeFt);
    if (passed === null) continue;
    const { startS: timeS } = passed;
    if (isUnseen(passed)) unseen.push({ kind, ...passed });
    else if (kind === 'decision-altitude') decision = { timeS, altitudeFt, assumed };
    else gates.push({ kind, timeS, altitudeFt });
  }
  return { gates, decision, unseen };
}

function isUnseen({ startS, endS }: Span): boolean {
  return endS > startS;
}

/** First descending through a height after final began, from the moment it began. */
function descentThrough(
  flown: Flown,
  { first, last }: Stretch,
  beganS: number,
  altitudeFt: number,
): Span | null {
  if (!(at(flown, flown.decidingAltitudeFt, beganS) > altitudeFt)) return null;
  const stretch = { first: Math.max(0, first - 1), last };
  return firstPassage(flown.track, stretch, flown.decidingAltitudeFt, altitudeFt, beganS);
}

/**
 * When a column first fell through a level at or after `afterS`: a moment between two fixes, as a span of no length,
 * or the gap with the last fix above before it and the first one below after it. Null when it never did.
 */
export function firstPassage(
  track: Pick<Track, 'timeS' | 'gapLimitS'>,
  { first, last }: Stretch,
  values: Float64Array,
  level: number,
  afterS: number,
): Span | null {
  const { timeS, gapLimitS } = track;
  for (let i = first + 1; i <= last; i++) {
    if (!(values[i - 1]! > level && values[i]! <= level)) continue;
    const [startS, endS] = [timeS[i - 1]!, timeS[i]!];
    if (endS - startS > gapLimitS) {
      if (startS >= afterS) return { startS, endS };
      continue;
    }
    const momentS = firstCrossing(track, { first: i - 1, last: i }, values, level, { afterS });
    if (momentS !== null) return { startS: momentS, endS: momentS };
  }
  return null;
}
