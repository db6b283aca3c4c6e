import { airacCycle, standingOn } from '../facility/airac.ts';
import type { Issue } from '../issue/issue.ts';
import { recordsIssue } from './records-issue.ts';

/**
 * A caution where a day lies outside of the cycle that a file of records is of; null where it lies inside. A cycle that
 * is none is told as well: then nobody knows until when the records are good.
 *
 * @param day ISO date, of the flight or today: core has no clock
 */
export function cycleIssue(cycle: string | null, day: string): Issue | null {
  const days = cycle === null ? null : airacCycle(cycle);
  if (days === null) {
    const message =
      'The records do not say which cycle they are of, so nobody can say whether they are current';
    return recordsIssue('records-cycle-unknown', `${message}.`, {
      tip: 'Compare what they give with the current chart.',
    });
  }
  const standing = standingOn(days, day);
  if (standing === null) return null;
  const code = standing === 'not yet in force' ? 'records-cycle-not-yet' : 'records-cycle-past';
  const message = `The records are of cycle ${days.cycle}, ${days.firstDay} to ${days.lastDay}: on ${day} they are ${standing}`;
  return recordsIssue(code, `${message}.`, { tip: 'Use the file of the cycle that was flown in.' });
}
