import { moment, type Case } from './case.ts';

/** The longest that stopping a descent is thought to take from its beginning to half of its sink. Ours. */
const LONGEST_S = 4;

/**
 * When the pilot began to stop the descent; null without a missed approach. Its event stands where half of the sink is
 * gone, and by then three quarters of the height that the sag costs: 22 of 30 ft. Stopped evenly, the descent was
 * begun to be stopped as long before that as it ended after. Held against the event itself, a missed approach begun at
 * decision altitude would be begun below it.
 */
export function goAroundBegunS(sitting: Case): number | null {
  const startS = moment(sitting, 'missed-approach-start');
  if (startS === null) return null;
  return startS - Math.min(LONGEST_S, moment(sitting, 'lowest-point')! - startS);
}
