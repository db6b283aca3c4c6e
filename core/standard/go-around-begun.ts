import { moment, type Case } from './case.ts';

/** The longest that stopping a descent is thought to take from its beginning to the event. Ours. */
const LONGEST_S = 5;
/** The event holds a sink rate against half of its mean over this long before (design, section 7). */
const MEAN_S = 10;

/**
 * When the pilot began to stop the descent; null without a missed approach. Its event stands where half of the mean
 * sink is gone, and by then three quarters of the height that the sag costs: 22 of 30 ft. Held against the event
 * itself, a missed approach begun at decision altitude would be begun below it.
 *
 * Of a sink that falls evenly from v to 0 in T, the mean over 10 s is v − v u² ÷ 20 T at u; half of it is left there
 * when the rest, r = T − u, is u − u² ÷ 20.
 */
export function goAroundBegunS(sitting: Case): number | null {
  const startS = moment(sitting, 'missed-approach-start');
  if (startS === null) return null;
  const restS = moment(sitting, 'lowest-point')! - startS;
  const sinceS = MEAN_S - Math.sqrt(Math.max(0, MEAN_S ** 2 - 2 * MEAN_S * restS));
  return startS - Math.min(LONGEST_S, sinceS);
}
