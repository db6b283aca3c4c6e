import type { Gap } from './track.ts';

/** The stretches between gaps, as first and last fix. */
export function stretches(count: number, gaps: readonly Gap[]): { first: number; last: number }[] {
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
 * Visits every fix with the 5 s centred on it, cut at a gap's edge. A fix alone between two gaps is not visited. The
 * window is one object, changed from visit to visit: nothing is allocated a fix.
 */
export function forEachWindow(
  timeS: Float64Array,
  gaps: readonly Gap[],
  visit: (window: Readonly<Window>) => void,
): void {
  const window: Window = { centre: 0, from: 0, fromShare: 0, to: 0, toShare: 0, durationS: 0 };
  for (const { first, last } of stretches(timeS.length, gaps)) {
    if (first === last) continue;
    const beganS = timeS[first]!;
    const endedS = timeS[last]!;
    let from = first;
    let to = first;
    for (let i = first; i <= last; i++) {
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
}

/** Change of a column over a window, on straight lines between fixes. */
export function changeOver(values: Float64Array, { from, fromShare, to, toShare }: Readonly<Window>): number {
  const start = values[from]! + fromShare * (values[from + 1]! - values[from]!);
  const end = values[to]! + toShare * (values[to + 1]! - values[to]!);
  return end - start;
}
