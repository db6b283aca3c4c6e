import { logIssue } from './log-issue.ts';
import { NumberColumn } from './number-column.ts';
import type { DecimalMark } from './parse-number.ts';
import { NO_ZONE } from './resolved-times.ts';
import type { ResolvedTimes } from './resolved-times.ts';
import type { Row } from './row.ts';
import type { Start } from './stated-start.ts';

const ELAPSED_CLOCK = /^(?:(\d+):)?(\d\d?):(\d\d(?:[.,]\d+)?)$/;

/** From these sizes on, a count since 1970 cannot be seconds (they would be years far ahead) but a finer unit. */
const FINER: readonly (readonly [from: number, unitS: number])[] = [
  [1e17, 1e-9],
  [1e14, 1e-6],
  [1e11, 1e-3],
];

/** Times written as a count: seconds (or finer) since 1970, or since the log's own start. */
export class CountedTimes {
  readonly #counts: NumberColumn;
  readonly #mark: DecimalMark;
  #unitS: number | null;
  readonly #sinceStart: boolean;

  /**
   * @param unitS seconds in one count; null: one second for elapsed time, by their size for epoch times
   * @param expectedRows how many rows are likely to come; 0 when nobody knows
   */
  constructor(sinceStart: boolean, unitS: number | null, mark: DecimalMark, expectedRows: number) {
    this.#counts = new NumberColumn(expectedRows);
    this.#sinceStart = sinceStart;
    this.#unitS = sinceStart ? (unitS ?? 1) : unitS;
    this.#mark = mark;
  }

  /** Adds what a row says in a cell. False, and no row, when that is no count. */
  add(row: Row, index: number): boolean {
    const count = row.number(index, this.#mark);
    if (!Number.isNaN(count)) {
      this.#unitS ??= FINER.find(([from]) => Math.abs(count) >= from)?.[1] ?? 1;
      // A quotient of whole numbers is the nearest double, a product with 0.001 is not.
      this.#counts.push(this.#unitS < 1 ? count / Math.round(1 / this.#unitS) : count * this.#unitS);
      return true;
    }
    const match = this.#sinceStart ? ELAPSED_CLOCK.exec(row.text(index).trim()) : null;
    if (match === null) return false;
    const seconds = Number(match[3]!.replace(',', '.'));
    this.#counts.push(Number(match[1] ?? 0) * 3600 + Number(match[2]) * 60 + seconds);
    return true;
  }

  /** @param start when an elapsed time began; null when unknown */
  resolve(start: Start | null): ResolvedTimes {
    const timeS = this.#counts.take();
    if (!this.#sinceStart) return { timeS, reference: 'utc', utcOffsetS: null, issues: [] };
    if (start === null) return { timeS, reference: 'elapsed', utcOffsetS: null, issues: [START_UNKNOWN] };
    for (let row = 0; row < timeS.length; row++) timeS[row]! += start.atS;
    return start.isLocal
      ? { timeS, reference: 'local', utcOffsetS: null, issues: [NO_ZONE] }
      : { timeS, reference: 'utc', utcOffsetS: null, issues: [] };
  }
}

const START_UNKNOWN = logIssue(
  'time-elapsed',
  'The file counts time from its own start and does not say when that was: its clock begins at 1970-01-01.',
  { tip: 'Set the start of the log.' },
);
