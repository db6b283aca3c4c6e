import { firstAfter, type Span } from '../../core/numeric/polyline.ts';
import type { SheetColumns } from '../../core/sheet/sheet.ts';

/**
 * A place between two fixes, as a fraction of a row: 3.5 is half-way from row 3 to row 4. Everything on the sheet
 * stands at one, so that a limit is crossed and a span ends where it did, and not at the fix before.
 */
export type Row = number;

/** The column's value at a row, on the straight line between its neighbours. */
export function valueAtRow(column: ArrayLike<number>, row: Row): number {
  const below = Math.floor(row);
  const part = row - below;
  if (part === 0) return column[below] ?? NaN;
  return column[below]! + (column[below + 1]! - column[below]!) * part;
}

/** The row of a moment, no farther than the first and the last. */
export function rowAt({ timeS }: Pick<SheetColumns, 'timeS'>, s: number): Row {
  const last = timeS.length - 1;
  const after = firstAfter(timeS, s);
  if (after === 0) return 0;
  if (after > last) return last;
  return after - 1 + (s - timeS[after - 1]!) / (timeS[after]! - timeS[after - 1]!);
}

/**
 * The rows of a span in runs that a line may be drawn through: parted at gaps and where the value is not known, with
 * the span's own ends between fixes.
 */
export function runsIn(columns: SheetColumns, span: Span, valueOf: (row: Row) => number): Row[][] {
  const first = rowAt(columns, span.startS);
  const last = rowAt(columns, span.endS);
  const runs: Row[][] = [];
  let run: Row[] = [];
  const close = () => {
    if (run.length > 1) runs.push(run);
    run = [];
  };
  const add = (row: Row, isCut: boolean) => {
    if (isCut) close();
    if (Number.isNaN(valueOf(row))) close();
    else run.push(row);
  };
  add(first, true);
  for (let row = Math.floor(first) + 1; row < last; row++) add(row, columns.gapBefore[row] === 1);
  if (last > first) add(last, columns.gapBefore[Math.ceil(last)] === 1);
  close();
  return runs;
}

/** The same run with a row more wherever the difference changes its sign. */
export function withCrossings(run: readonly Row[], differenceAt: (row: Row) => number): Row[] {
  const rows: Row[] = [];
  let before = NaN;
  for (const row of run) {
    const now = differenceAt(row);
    if (before * now < 0) {
      const last = rows[rows.length - 1]!;
      rows.push(last + (row - last) * (before / (before - now)));
    }
    rows.push(row);
    before = now;
  }
  return rows;
}

/** The parts of a run of two rows or more in which a condition holds. */
export function partsWhere(run: readonly Row[], holds: (row: Row) => boolean): Row[][] {
  const parts: Row[][] = [];
  let part: Row[] = [];
  for (const row of run) {
    if (holds(row)) part.push(row);
    else {
      if (part.length > 1) parts.push(part);
      part = [];
    }
  }
  if (part.length > 1) parts.push(part);
  return parts;
}
