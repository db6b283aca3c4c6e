/**
 * A problem in the user's data is a value, never an exception.
 *
 * - `refusal`: the input cannot be used at all
 * - `warning`: something is wrong and may change the answer
 * - `caution`: something was assumed; the answer holds if the assumption does
 * - `note`: worth knowing, nothing to do
 */
export type Severity = 'refusal' | 'warning' | 'caution' | 'note';

export interface Issue {
  /** Kebab-case and stable: programs decide by this, never by the message. */
  readonly code: string;
  readonly severity: Severity;
  /** One clear sentence for a person, with the names and values it speaks of. */
  readonly message: string;
  /** How many rows, fixes or values it concerns; 1 for the file as a whole. */
  readonly count: number;
  /** First line of the file it concerns, counted from 1; null when it has no line. */
  readonly firstLine: number | null;
  /** What the user can do about it; null when there is nothing to do. */
  readonly tip: string | null;
  /** Names of a file's columns, where the user can say which of them holds what is missing. */
  readonly columns?: readonly string[];
}

/** Either a usable value with what is worth saying about it, or the one reason why there is none. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T; readonly issues: readonly Issue[] }
  | { readonly ok: false; readonly refusal: Issue; readonly issues: readonly Issue[] };

type IssueDetails = Partial<Pick<Issue, 'count' | 'firstLine' | 'tip' | 'columns'>>;

/** Makes an issue; count 1, no line and no tip unless given. */
export function issue(severity: Severity, code: string, message: string, details: IssueDetails = {}): Issue {
  return { code, severity, message: clipped(message), count: 1, firstLine: null, tip: null, ...details };
}

/** Longer than any sentence of ours with what a sound file has in it. */
const LONGEST = { whole: 700, head: 450, tail: 200 } as const;

/** A sentence without the middle of it where that is too long to be read: a file may hold names as long as it likes. */
function clipped(message: string): string {
  if (message.length <= LONGEST.whole) return message;
  // Characters of two units are not cut apart.
  const whole = (part: string) => part.replace(/^[\uDC00-\uDFFF]|[\uD800-\uDBFF]$/g, '');
  return `${whole(message.slice(0, LONGEST.head))} … ${whole(message.slice(-LONGEST.tail))}`;
}

export function usable<T>(value: T, issues: readonly Issue[] = []): Outcome<T> {
  return { ok: true, value, issues };
}

export function refused(
  code: string,
  message: string,
  details: IssueDetails = {},
  issues: readonly Issue[] = [],
): Outcome<never> {
  return { ok: false, refusal: issue('refusal', code, message, details), issues };
}
