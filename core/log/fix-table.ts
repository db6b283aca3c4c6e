import type { Log, Quantity } from './log.ts';
import { NumberColumn } from './number-column.ts';

/** What remains of a table once its times are known: rows without a usable time and columns without a value are out. */
export interface FinishedTable {
  readonly timeS: Float64Array;
  readonly line: Uint32Array;
  readonly values: Log['values'];
  readonly breaks: readonly number[];
  /** Rows whose date does not exist. */
  readonly lost: { readonly count: number; readonly firstLine: number | null };
}

/** The fixes of a log while they are read: numbers only, a column for each quantity. */
export class FixTable {
  readonly #lines: NumberColumn;
  readonly #columns: ReadonlyMap<Quantity, NumberColumn>;
  readonly #breaks: number[] = [];
  #breakAhead = false;

  /** @param expectedRows how many rows are likely to come; 0 when nobody knows */
  constructor(quantities: Iterable<Quantity>, expectedRows: number) {
    this.#lines = new NumberColumn(expectedRows);
    this.#columns = new Map([...quantities].map((quantity) => [quantity, new NumberColumn(expectedRows)]));
  }

  column(quantity: Quantity): NumberColumn {
    return this.#columns.get(quantity)!;
  }

  /** Ends a row, for which each column was given its value. */
  endRow(line: number): void {
    if (this.#breakAhead) this.#breaks.push(this.#lines.length);
    this.#breakAhead = false;
    this.#lines.push(line);
  }

  /** The next row begins a new stretch, if any row was before it. */
  breakHere(): void {
    this.#breakAhead = this.#lines.length > 0;
  }

  /** @param timeS the time of each row, NaN for a row to leave out */
  finish(timeS: Float64Array): FinishedTable {
    const lines = this.#lines.take();
    const keep = rowsWithTime(timeS);
    const pick = (all: Float64Array): Float64Array =>
      keep === null ? all : Float64Array.from(keep, (row) => all[row]!);
    const firstLost = timeS.findIndex((time) => Number.isNaN(time));
    const values: { [Q in Quantity]?: Float64Array } = {};
    for (const [quantity, column] of this.#columns) {
      if (column.length > 0 && column.isVoid) continue;
      values[quantity] = pick(column.take());
    }
    return {
      timeS: pick(timeS),
      line: new Uint32Array(pick(lines)),
      values: values as Log['values'],
      breaks: keep === null ? this.#breaks : movedBreaks(this.#breaks, keep),
      lost: { count: keep === null ? 0 : timeS.length - keep.length, firstLine: lines[firstLost] ?? null },
    };
  }
}

/** Rows to keep; null when that is all of them. */
function rowsWithTime(timeS: Float64Array): number[] | null {
  if (!timeS.some((time) => Number.isNaN(time))) return null;
  const keep: number[] = [];
  for (let row = 0; row < timeS.length; row++) if (!Number.isNaN(timeS[row]!)) keep.push(row);
  return keep;
}

/** A stretch begins at the first of its rows that is kept. */
function movedBreaks(breaks: readonly number[], keep: readonly number[]): number[] {
  const moved = breaks.map((row) => keep.findIndex((kept) => kept >= row)).filter((at) => at > 0);
  return [...new Set(moved)];
}
