import { issue, refused } from '../issue/issue.ts';
import type { Issue, Outcome } from '../issue/issue.ts';
import { LOG_ISSUES } from './issue-codes.ts';
import type { LogIssueCode, LogRefusalCode } from './issue-codes.ts';

type Details = Parameters<typeof issue>[3];

/** An issue of this room: its severity stands with its code in `issue-codes.ts`. */
export function logIssue(
  code: Exclude<LogIssueCode, LogRefusalCode>,
  message: string,
  details?: Details,
): Issue {
  return issue(LOG_ISSUES[code][0], code, message, details);
}

/** A refusal of this room. */
export function logRefused(
  code: LogRefusalCode,
  message: string,
  details?: Details,
  issues?: readonly Issue[],
): Outcome<never> {
  return refused(code, message, details, issues);
}
