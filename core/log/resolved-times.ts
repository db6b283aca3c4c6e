import type { Issue } from '../issue/issue.ts';
import { logIssue } from './log-issue.ts';
import type { Log } from './log.ts';

/** The times of all rows of a log, once the whole of it was seen. */
export interface ResolvedTimes {
  /** Seconds since 1970-01-01T00:00:00Z; NaN for a row whose date does not exist. */
  readonly timeS: Float64Array;
  readonly reference: Log['timeReference'];
  /** See `Log`. */
  readonly utcOffsetS: number | null;
  readonly issues: readonly Issue[];
}

export const NO_ZONE = logIssue(
  'time-zone-unknown',
  'The times do not say how far they are from UTC: they are taken as UTC.',
  { tip: 'Set the time zone of the log, such as +02:00 or the zone of the place.' },
);
