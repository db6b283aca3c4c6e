import type { Span } from '../../core/numeric/polyline.ts';
import type { Sheet } from '../../core/sheet/sheet.ts';
import { courseOffsetFt } from '../../core/sheet/beam-lines.ts';
import { runsIn, valueAtRow, type Row } from './rows.ts';

/** Lowest and highest of a column over a span; null where nothing is known. */
export function extentOf(
  { columns }: Pick<Sheet, 'columns'>,
  span: Span,
  valueOf: (row: Row) => number,
): [number, number] | null {
  let low = Infinity;
  let high = -Infinity;
  for (const run of runsIn(columns, span, valueOf))
    for (const row of run) {
      const value = valueOf(row);
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
  return low <= high ? [low, high] : null;
}

/** From a little under the runway to a little over what was flown. */
export function altitudeDomain(sheet: Sheet, seen: Span): [number, number] {
  const { heights, columns } = sheet;
  const flown = extentOf(sheet, seen, (row) => valueAtRow(columns.altitudeFt, row));
  const lowest = Math.min(heights.thresholdFt, flown?.[0] ?? Infinity);
  const highest = Math.max(heights.thresholdFt + 300, flown?.[1] ?? -Infinity);
  const space = (highest - lowest) * 0.08;
  return [lowest - space, highest + space];
}

/** All that was flown off the centreline, and never less than a full scale at its far end. */
export function offsetDomain({ columns, beam }: Sheet, seen: Span): [number, number] {
  const flown = extentOf({ columns }, seen, (row) => valueAtRow(columns.offsetFt, row)) ?? [0, 0];
  const far = extentOf({ columns }, seen, (row) => valueAtRow(columns.distanceNm, row))?.[1] ?? 0;
  const left = Math.min(flown[0], courseOffsetFt(beam, Math.max(far, 0), -1) * 1.1);
  const right = Math.max(flown[1], courseOffsetFt(beam, Math.max(far, 0), 1) * 1.1);
  const space = (right - left) * 0.06;
  return [left - space, right + space];
}
