import type { ApproachDebrief } from '../debrief/debrief.ts';

/** What became of an approach that was, or was not, stable at its gate and from there on. */
export type WentOn = 'stable' | 'unstable-went-around' | 'unstable-continued' | 'unclear' | 'not-assessed';

/** Who is still on the way down below this, has continued: as for the lowest level (design, section 11). */
const CONTINUED_BELOW_FT = 300;

/**
 * A missed approach that begins above decision altitude, and above 300 ft over the threshold, is a going around: in
 * practice most approaches end in one at minimums, stable or not. Common practice, no source.
 */
export function wentOn({ criteria, outcome, events }: ApproachDebrief, thresholdElevationFt: number): WentOn {
  const stability = criteria.find(({ id }) => id === 'stability');
  if (!stability || stability.verdict === 'not-assessed') return 'not-assessed';
  if (stability.verdict === 'unclear') return 'unclear';
  if (stability.verdict === 'met') return 'stable';
  if (outcome === 'incomplete') return 'unclear';
  if (outcome === 'broken-off') return 'unstable-went-around';
  if (outcome !== 'missed-approach') return 'unstable-continued';
  if (events.some(({ kind }) => kind === 'decision-altitude')) return 'unstable-continued';
  const begun = events.find(({ kind }) => kind === 'missed-approach-start') ?? null;
  if (begun === null || begun.altitudeFt === null) return 'unclear';
  const isLow = begun.altitudeFt < thresholdElevationFt + CONTINUED_BELOW_FT;
  return isLow ? 'unstable-continued' : 'unstable-went-around';
}
