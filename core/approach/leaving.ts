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
  let last = pass.last;
  while (last < pass.until && before(last + 1) >= 0) last++;
  return firstHold(flown.track, { first: pass.last, last }, [beyondLocalizer(flown), before], LEFT_S);
}
