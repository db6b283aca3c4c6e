import { beforeThreshold, beyondLocalizer } from './established.ts';
import type { Flown } from './flown.ts';
import { firstHold } from './hold.ts';
import type { Pass } from './passes.ts';

/** Beyond full scale for this long, and not back again: left (design, section 7). */
const LEFT_S = 5;

/**
 * When the localizer was left before the threshold for good: the first moment, after the pass was last on it, from
 * which it stands beyond full scale for 5 s. Null when the aircraft stayed on it to the threshold or the log's end.
 */
export function leavingS(flown: Flown, pass: Pass): number | null {
  const before = beforeThreshold(flown);
  const { timeS } = flown.track;
  let inTime = pass.last;
  while (inTime < pass.until && before.holds(inTime + 1)) inTime++;
  // It has to begin before the threshold; the seconds that prove it may lie behind.
  let last = inTime;
  while (last < pass.until && timeS[last]! < timeS[inTime]! + LEFT_S) last++;
  const leftS = firstHold(flown.track, { first: pass.last, last }, [beyondLocalizer(flown)], LEFT_S);
  return leftS !== null && leftS <= timeS[inTime]! ? leftS : null;
}
