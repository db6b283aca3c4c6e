import type { Track } from '../track/track.ts';

/** How far inside a condition a fix is: positive or zero holds, negative or NaN does not. */
export type Margin = (fix: number) => number;

/** What has to hold: whether it does at a fix, and by how much, which is asked only where it begins and ends. */
export interface Condition {
  readonly holds: (fix: number) => boolean;
  readonly margin: Margin;
}

/** A condition told by its margin alone: for few fixes, since a number that a function returns is allocated. */
export function byMargin(margin: Margin): Condition {
  return { holds: (fix) => margin(fix) >= 0, margin };
}

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
  conditions: readonly Condition[],
  forS: number,
): number | null {
  return firstHoldWhere(track, stretch, conditions, forS, () => true);
}

/**
 * The first such moment that is also taken. Those tried in order: where a hold begins, between two fixes, each later fix
 * from which it still lasts, and the last moment from which it does.
 */
export function firstHoldWhere(
  { timeS, gapLimitS }: Pick<Track, 'timeS' | 'gapLimitS'>,
  { first, last }: Stretch,
  conditions: readonly Condition[],
  forS: number,
  isTaken: (momentS: number) => boolean,
): number | null {
  let fromS: number | null = null;
  let next = first;
  let toldS = Infinity;
  for (let i = first; i <= last; i++) {
    const afterGap = i > first && timeS[i]! - timeS[i - 1]! > gapLimitS;
    if (afterGap) fromS = null;
    const isHeld = allHold(conditions, i);
    if (isHeld && fromS === null) {
      fromS = i === first || afterGap ? timeS[i]! : beginS(timeS, conditions, i);
      next = fromS < timeS[i]! ? i : i + 1;
      toldS = Infinity;
    }
    if (fromS === null) continue;
    const heldToS = isHeld ? timeS[i]! : endS(timeS, conditions, i);
    for (; fromS !== null && heldToS - fromS >= forS; next++) {
      if (isTaken(fromS)) return fromS;
      toldS = fromS;
      fromS = next < i || isHeld ? (timeS[next] ?? null) : null;
    }
    if (isHeld) continue;
    if (heldToS - forS > toldS && isTaken(heldToS - forS)) return heldToS - forS;
    fromS = null;
  }
  return null;
}

function allHold(conditions: readonly Condition[], fix: number): boolean {
  for (let k = 0; k < conditions.length; k++) if (!conditions[k]!.holds(fix)) return false;
  return true;
}

/** When the last of the conditions began to hold, before fix `i`, where all of them do. */
function beginS(timeS: Float64Array, conditions: readonly Condition[], i: number): number {
  return Math.max(
    ...conditions.map(({ margin }) => (margin(i - 1) >= 0 ? timeS[i - 1]! : crossingS(timeS, margin, i))),
  );
}

/** When the first of the conditions ceased to hold, before fix `i`, where some of them do not. */
function endS(timeS: Float64Array, conditions: readonly Condition[], i: number): number {
  return Math.min(
    ...conditions.map(({ margin }) => (margin(i) >= 0 ? timeS[i]! : crossingS(timeS, margin, i))),
  );
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
