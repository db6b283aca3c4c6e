import { sinkErrorFpm } from '../track/position-error.ts';
import type { Flown } from './flown.ts';

/** Vertical speed, where it is worked out, is a line through the heights of this long (design, section 8). */
const FITTED_S = 6;

/** How far off a fix's vertical speed may be, ft/min, 95 %: as recorded, or as the heights wander. */
export function followedSinkErrorFpm({ track, error }: Flown, i: number): number {
  return track.derived.verticalSpeedFpm ? sinkErrorFpm(error, i, FITTED_S) : error.recordedSinkFpm;
}
