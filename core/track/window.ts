import { firstAfter } from '../numeric/polyline.ts';
import type { Gap } from './track.ts';

/** Fixes in a row. */
interface Stretch {
  readonly first: number;
  readonly last: number;
}

/** The stretches between gaps, in order. */
export function stretches(count: number, gaps: readonly Gap[]): Stretch[] {
  const starts = [0, ...gaps.map((gap) => gap.beforeIndex + 1)];
  return starts.map((first, k) => ({ first, last: (starts[k + 1] ?? count) - 1 }));
}

/** Two places on the straight lines between fixes: `share` of the way from fix `from` to the next one. */
export interface Window {
  /** The fix it is centred on. */
  centre: number;
  from: number;
  fromShare: number;
  to: number;
  toShare: number;
  durationS: number;
}

/** Half of the 5 s over which track and groundspeed are taken (design, section 7). */
const HALF_WINDOW_S = 2.5;

/**
 * Visits the fixes from `first` to `last` with the 5 s centred on each, cut at a gap's edge. A fix alone between two
 * gaps is not visited. The window is one object, changed from visit to visit: nothing is allocated a fix.
 */
export function forEachWindow(
  timeS: Float64Array,
  parts: readonly Stretch[],
  { first, last }: Stretch,
  visit: (window: Readonly<Window>) => void,
): void {
  for (let k = partOf(parts, first); k < parts.length && parts[k]!.first <= last; k++) {
    const part = parts[k]!;
    if (part.first === part.last) continue;
    const visited = { first: Math.max(first, part.first), last: Math.min(last, part.last) };
    visitWindows(timeS, part, visited, visit);
  }
}

/** Which stretch a fix belongs to. Binary search: a log may have as many gaps as fixes. */
function partOf(parts: readonly Stretch[], fix: number): number {
  let low = 0;
  let high = parts.length - 1;
  while (low < high) {
    const mid = (low + high) >> 1;
    if (parts[mid]!.last < fix) low = mid + 1;
    else high = mid;
  }
  return low;
}

function visitWindows(
  timeS: Float64Array,
  { first, last }: Stretch,
  visited: Stretch,
  visit: (window: Readonly<Window>) => void,
): void {
  const window: Window = { centre: 0, from: 0, fromShare: 0, to: 0, toShare: 0, durationS: 0 };
  const beganS = timeS[first]!;
  const endedS = timeS[last]!;
  const before = firstAfter(timeS, timeS[visited.first]! - HALF_WINDOW_S) - 1;
  let from = Math.min(last - 1, Math.max(first, before));
  let to = from;
  for (let i = visited.first; i <= visited.last; i++) {
    const atS = timeS[i]!;
    const startS = atS - HALF_WINDOW_S > beganS ? atS - HALF_WINDOW_S : beganS;
    const endS = atS + HALF_WINDOW_S < endedS ? atS + HALF_WINDOW_S : endedS;
    while (from + 1 < last && timeS[from + 1]! <= startS) from++;
    while (to + 1 < last && timeS[to + 1]! <= endS) to++;
    window.centre = i;
    window.from = from;
    window.fromShare = (startS - timeS[from]!) / (timeS[from + 1]! - timeS[from]!);
    window.to = to;
    window.toShare = (endS - timeS[to]!) / (timeS[to + 1]! - timeS[to]!);
    window.durationS = endS - startS;
    visit(window);
  }
}

/** Change of a column over a window, on straight lines between fixes. */
export function changeOver(values: Float64Array, { from, fromShare, to, toShare }: Readonly<Window>): number {
  const start = values[from]! + fromShare * (values[from + 1]! - values[from]!);
  const end = values[to]! + toShare * (values[to + 1]! - values[to]!);
  return end - start;
}
