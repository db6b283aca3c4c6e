import { geodesicBetween, type Position } from '../earth/geodesic.ts';
import type { Drafted } from './drafted.ts';
import { leavesOf, type Leaf } from './leaves.ts';

/**
 * What is chosen by: the path of a value, or of a place (`runway.threshold`) for its latitude and longitude, which are
 * always of one source.
 */
export function unitOf(path: string): string {
  return path.replace(/\.(?:latDeg|lonDeg)$/, '');
}

/** Where a draft says that a place is; null where it says half of it, or nothing. */
export function positionIn(leaves: readonly Leaf[], place: string): Position | null {
  const degrees = (key: string) => leaves.find(({ path }) => path === `${place}.${key}`)?.value;
  const [latDeg, lonDeg] = [degrees('latDeg'), degrees('lonDeg')];
  return typeof latDeg === 'number' && typeof lonDeg === 'number' ? { latDeg, lonDeg } : null;
}

/** The runway's direction by the first draft that tells it, degrees true; null when none does. */
export function directionDeg(drafts: readonly Drafted[]): number | null {
  for (const draft of drafts) {
    const leaves = leavesOf(draft);
    const [threshold, farEnd] = [positionIn(leaves, 'runway.threshold'), positionIn(leaves, 'runway.farEnd')];
    if (threshold !== null && farEnd !== null) return geodesicBetween(threshold, farEnd).startBearingDeg;
    const { trueBearingDeg } = draft.facility.runway ?? {};
    if (trueBearingDeg !== undefined) return trueBearingDeg;
  }
  return null;
}
