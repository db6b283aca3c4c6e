import type { Issue } from '../../core/issue/issue.ts';

/** Cautions of what was assumed of a log where another reading would give other verdicts, or another day. */
const ASSUMED: ReadonlySet<string> = new Set([
  'unit-assumed',
  'altitude-kind-assumed',
  'needle-scale-assumed',
  'date-order-assumed',
  'time-zone-unknown',
  'time-without-date',
  'time-elapsed',
]);

/** What whoever brings many logs in has to hear of one of them: warnings, and what a verdict or its date stands on. */
export function worthAsking(issues: readonly Issue[]): Issue[] {
  return issues.filter(({ severity, code }) => severity === 'warning' || ASSUMED.has(code));
}
