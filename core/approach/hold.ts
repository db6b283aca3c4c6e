import type { Track } from '../track/track.ts';

/** How far inside a condition a fix is: positive or zero holds, negative or NaN does not. */
export type Margin = (fix: number) => number;

export interface Stretch {
  readonly first: number;
  readonly last: number;
}

/**
 * The first moment from which all conditions hold for `forS` seconds, between two fixes; null when there is none.
 * Beginnings and ends are interpolated between fixes; no hold spans a gap.
 */
export function firstHold(
  track: Pick<Track, 'timeS' | 'gapLimitS'>,
  stretch: Stretch,
  margins: readonly Margin[],
  forS: number,
): number | null {
  for (const holdS of holds(track, stretch, margins, forS)) return holdS;
  return null;
}

/**
 * All such moments in order: where a hold begins, between two fixes, each later fix from which it still lasts, and the
 * last moment from which it does.
 */
export function* holds(
  { timeS, gapLimitS }: Pick<Track, 'timeS' | 'gapLimitS'>,
  { first, last }: Stretch,
  margins: readonly Margin[],
  forS: number,
): Generator<number> {
  let fromS: number | null = null;
  let next = first;
  let toldS = Infinity;
  for (let i = first; i <= last; i++) {
    const afterGap = i > first && timeS[i]! - timeS[i - 1]! > gapLimitS;
    if (afterGap) fromS = null;
    const isHeld = allHold(margins, i);
    if (isHeld && fromS === null) {
      fromS = i === first || afterGap ? timeS[i]! : beginS(timeS, margins, i);
      next = fromS < timeS[i]! ? i : i + 1;
      toldS = Infinity;
    }
    if (fromS === null) continue;
    const heldToS = isHeld ? timeS[i]! : endS(timeS, margins, i);
    for (; fromS !== null && heldToS - fromS >= forS; next++) {
      yield fromS;
      toldS = fromS;
      fromS = next < i || isHeld ? (timeS[next] ?? null) : null;
    }
    if (isHeld) continue;
    if (heldToS - forS > toldS) yield heldToS - forS;
    fromS = null;
  }
}

function allHold(margins: readonly Margin[], fix: number): boolean {
  for (let k = 0; k < margins.length; k++) if (!(margins[k]!(fix) >= 0)) return false;
  return true;
}

/** When the last of the conditions began to hold, before fix `i`, where all of them do. */
function beginS(timeS: Float64Array, margins: readonly Margin[], i: number): number {
  return Math.max(
    ...margins.map((margin) => (margin(i - 1) >= 0 ? timeS[i - 1]! : crossingS(timeS, margin, i))),
  );
}

/** When the first of the conditions ceased to hold, before fix `i`, where some of them do not. */
function endS(timeS: Float64Array, margins: readonly Margin[], i: number): number {
  return Math.min(...margins.map((margin) => (margin(i) >= 0 ? timeS[i]! : crossingS(timeS, margin, i))));
}

/** Where a margin passes zero between fix `i` − 1 and `i`; where one of the two is not known, the known one's time. */
function crossingS(timeS: Float64Array, margin: Margin, i: number): number {
  const before = margin(i - 1);
  const after = margin(i);
  if (Number.isNaN(before)) return timeS[i]!;
  if (Number.isNaN(after)) return timeS[i - 1]!;
  return timeS[i - 1]! + (before / (before - after)) * (timeS[i]! - timeS[i - 1]!);
}

/**
 * The first moment after `afterS` at which a column falls to a level, or with `rising` rises to it, between two
 * fixes; null when it never does. Interpolated; a gap is not looked into.
 */
export function firstCrossing(
  { timeS, gapLimitS }: Pick<Track, 'timeS' | 'gapLimitS'>,
  { first, last }: Stretch,
  values: Float64Array,
  level: number,
  { afterS = -Infinity, rising = false }: { readonly afterS?: number; readonly rising?: boolean } = {},
): number | null {
  const sign = rising ? -1 : 1;
  for (let i = first + 1; i <= last; i++) {
    const before = sign * (values[i - 1]! - level);
    const after = sign * (values[i]! - level);
    if (!(before > 0 && after <= 0) || timeS[i]! - timeS[i - 1]! > gapLimitS) continue;
    const crossingS = timeS[i - 1]! + (before / (before - after)) * (timeS[i]! - timeS[i - 1]!);
    if (crossingS >= afterS) return crossingS;
  }
  return null;
}
