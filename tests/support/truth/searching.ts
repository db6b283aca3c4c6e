import { RATE, type ViewedFlight } from './viewed-flight.ts';

/** Moments by their place in the columns, both included. */
export interface Reach {
  readonly first: number;
  readonly last: number;
}

/** Zero or more where a condition holds. */
export type Holds = (i: number) => number;

/** The first place at which something is so; null when there is none. */
export function firstWhere({ first, last }: Reach, is: (i: number) => boolean): number | null {
  for (let i = first; i <= last; i++) if (is(i)) return i;
  return null;
}

/** Whether something is so at every place; also where there is none. */
export function everywhere(reach: Reach, is: (i: number) => boolean): boolean {
  return firstWhere(reach, (i) => !is(i)) === null;
}

/** The mean of a column over some moments. */
export function meanOver({ first, last }: Reach, column: Float64Array): number {
  let sum = 0;
  for (let i = first; i <= last; i++) sum += column[i]!;
  return sum / (last - first + 1);
}

/** The first time from which all conditions hold together for so many seconds. */
export function firstHeld(
  view: ViewedFlight,
  reach: Reach,
  conditions: readonly Holds[],
  seconds: number,
): number | null {
  const length = Math.round(seconds * RATE);
  let since = reach.first;
  for (let i = reach.first; i <= Math.min(reach.last + length, view.count - 1); i++) {
    if (!conditions.every((holds) => holds(i) >= 0)) since = i + 1;
    else if (i - since >= length) return startOf(view, reach, conditions, since);
    if (since > reach.last) return null;
  }
  return null;
}

/** When, between a moment and the one before it, the last of the conditions came true. */
function startOf(view: ViewedFlight, { first }: Reach, conditions: readonly Holds[], i: number): number {
  if (i === first) return view.timeS[i]!;
  return Math.max(...conditions.map((holds) => (holds(i - 1) >= 0 ? 0 : timeOfZero(view, holds, i))));
}

/** When a value passed zero on its straight line from one moment to the next, which is `i`. */
export function timeOfZero({ timeS }: ViewedFlight, value: Holds, i: number): number {
  const [before, after] = [value(i - 1), value(i)];
  if (!Number.isFinite(before)) return timeS[i]!;
  return timeS[i - 1]! + (before / (before - after)) * (timeS[i]! - timeS[i - 1]!);
}

/** The first time at which a value falls through zero, coming from above it. */
export function firstFall(view: ViewedFlight, { first, last }: Reach, value: Holds): number | null {
  const i = firstWhere({ first: first + 1, last }, (k) => value(k) <= 0 && value(k - 1) > 0);
  return i === null ? null : timeOfZero(view, value, i);
}

/** The place of the last moment that is not later than a time. */
export function placeOf({ timeS, count }: ViewedFlight, s: number): number {
  return Math.max(0, Math.min(count - 1, Math.floor((s - timeS[0]!) * RATE + 1e-6)));
}

export function range(from: number, to: number): number[] {
  return Array.from({ length: Math.max(0, to - from + 1) }, (_, i) => from + i);
}
