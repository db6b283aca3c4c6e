import { issue, refused, type Issue, type Outcome } from '../issue/issue.ts';
import { RECORDS_ISSUES, type RecordsIssueCode } from './issue-codes.ts';

type Details = Parameters<typeof issue>[3];

/** An issue of this room: its severity stands with its code in `issue-codes.ts`. */
export function recordsIssue(code: RecordsIssueCode, message: string, details?: Details): Issue {
  return issue(RECORDS_ISSUES[code][0], code, message, details);
}

/** A refusal of this room. */
export function recordsRefused(code: RecordsIssueCode, message: string, details?: Details): Outcome<never> {
  return refused(code, message, details);
}
