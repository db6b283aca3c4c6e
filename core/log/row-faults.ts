import { issue } from '../issue/issue.ts';
import type { Issue, Severity } from '../issue/issue.ts';

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
      const [code, column] = kind.split('\t');
      const { severity, message, tip } = FAULTS[code as FaultCode];
      return issue(severity, code!, message(column ?? '', seen.count), {
        count: seen.count,
        firstLine: seen.firstLine,
        tip,
      });
    });
  }
}

interface Fault {
  readonly severity: Severity;
  readonly message: (column: string, count: number) => string;
  readonly tip: string | null;
}

const rows = (count: number): string => (count === 1 ? '1 row' : `${count} rows`);
const fault = (severity: Severity, message: Fault['message'], tip: string | null = null): Fault => ({
  severity,
  message,
  tip,
});

const FAULTS = {
  'row-without-position': fault('caution', (_, n) => `${rows(n)} without a usable position left out.`),
  'row-without-time': fault('caution', (_, n) => `${rows(n)} without a usable time left out.`),
  'row-too-short': fault('caution', (_, n) => `${rows(n)} with too few cells left out.`),
  'row-too-long': fault(
    'caution',
    (_, n) => `${rows(n)} with more cells than the header names left out.`,
    'A delimiter inside a text cell that is not quoted moves all values behind it.',
  ),
  'row-cut-short': fault(
    'caution',
    () => 'The last row ends in the middle and is left out.',
    'The recording or a copy was interrupted there.',
  ),
  'row-under-other-header': fault(
    'warning',
    (_, n) => `${rows(n)} under a second header, with other columns, left out.`,
    'Split the file at that header and open the parts one by one.',
  ),
  'quote-unclosed': fault('caution', (_, n) => `${rows(n)} with a quote that is never closed left out.`),
  'value-unreadable': fault(
    'caution',
    (column, n) => `Column "${column}" holds no readable number in ${rows(n)}: unknown there.`,
  ),
  'value-marked-invalid': fault(
    'note',
    (column, n) =>
      `Column "${column}" holds an impossible value, a mark for "invalid", in ${rows(n)}: unknown there.`,
  ),
  'height-of-2d-fix': fault(
    'note',
    (_, n) => `${rows(n)} with a two-dimensional fix: the height is unknown there.`,
  ),
  'longitude-wrapped': fault(
    'note',
    (_, n) => `Longitudes run from 0 to 360: ${rows(n)} brought to −180 to 180.`,
  ),
} as const;

export type FaultCode = keyof typeof FAULTS;
