import type { Issue } from '../issue/issue.ts';
import type { LogIssueCode } from './issue-codes.ts';
import { logIssue } from './log-issue.ts';

interface Seen {
  count: number;
  firstLine: number | null;
}

/** Faults of single rows or values, gathered by kind so that a thousand of them are one issue. */
export class RowFaults {
  readonly #seen = new Map<string, Seen>();

  /** @param kind a fault's code, with the column's header behind a tab where it concerns one */
  add(kind: string, line: number | null, count = 1): void {
    if (count === 0) return;
    const seen = this.#seen.get(kind);
    if (seen === undefined) this.#seen.set(kind, { count, firstLine: line });
    else seen.count += count;
  }

  /** One issue for each kind. */
  issues(): Issue[] {
    return [...this.#seen].map(([kind, seen]) => {
      const [code, column] = kind.split('\t') as [FaultCode, string?];
      const { message, tip } = FAULTS[code];
      return logIssue(code, message(column ?? '', seen.count), {
        count: seen.count,
        firstLine: seen.firstLine,
        tip,
      });
    });
  }
}

interface Fault {
  readonly message: (column: string, count: number) => string;
  readonly tip: string | null;
}

const rows = (count: number): string => (count === 1 ? '1 row' : `${count} rows`);
const fault = (message: Fault['message'], tip: string | null = null): Fault => ({ message, tip });

const FAULTS = {
  'row-without-position': fault((_, n) => `${rows(n)} without a usable position left out.`),
  'row-without-time': fault((_, n) => `${rows(n)} without a usable time left out.`),
  'row-too-short': fault((_, n) => `${rows(n)} with too few cells left out.`),
  'row-too-long': fault(
    (_, n) => `${rows(n)} with more cells than the header names left out.`,
    'A delimiter inside a text cell that is not quoted moves all values behind it.',
  ),
  'row-cut-short': fault(
    () => 'The last row ends in the middle and is left out.',
    'The recording or a copy was interrupted there.',
  ),
  'row-under-other-header': fault(
    (_, n) => `${rows(n)} under a second header, with other columns, left out.`,
    'Split the file at that header and open the parts one by one.',
  ),
  'quote-unclosed': fault((_, n) => `${rows(n)} with a quote that is never closed left out.`),
  'value-unreadable': fault(
    (column, n) => `Column "${column}" holds no readable number in ${rows(n)}: unknown there.`,
  ),
  'value-marked-invalid': fault(
    (column, n) =>
      `Column "${column}" holds an impossible value, a mark for "invalid", in ${rows(n)}: unknown there.`,
  ),
  'height-of-2d-fix': fault((_, n) => `${rows(n)} with a two-dimensional fix: the height is unknown there.`),
  'longitude-wrapped': fault((_, n) => `Longitudes run from 0 to 360: ${rows(n)} brought to −180 to 180.`),
} as const satisfies Partial<Record<LogIssueCode, Fault>>;

export type FaultCode = keyof typeof FAULTS;
