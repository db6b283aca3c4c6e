import { inbound, withinLocalizer } from './established.ts';
import type { Flown } from './flown.ts';
import { firstHold } from './hold.ts';
import type { Pass } from './passes.ts';

/** When the localizer came alive: first within full scale and inbound, between the pass's first fix and the one before. */
export function aliveS(flown: Flown, { first, last }: Pass): number {
  const stretch = { first: Math.max(0, first - 1), last };
  return firstHold(flown.track, stretch, [withinLocalizer(flown, 1), ...inbound(flown)], 0)!;
}
