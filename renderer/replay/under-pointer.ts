import type { Frame } from '../sheet/frame.ts';
import { rowAt, valueAtRow } from '../sheet/rows.ts';

/**
 * The moment at which the aircraft stood at an x of the sheet. On the miles it may have been there more than once:
 * the time nearest to `nearS` is meant. Beyond both ends it is the end's.
 */
export function momentAtX(frame: Frame, x: number, nearS: number): number {
  const { sheet, view, xOfRow } = frame;
  const { timeS } = sheet.columns;
  if (view.axis === 'time') return clamped(frame, frame.x.invert(x));
  let best = NaN;
  let nearest = 0;
  let to = xOfRow(0) - x;
  let away = Math.abs(to);
  for (let row = 0; row + 1 < timeS.length; row++) {
    const from = to;
    to = xOfRow(row + 1) - x;
    if (Math.abs(to) < away) [away, nearest] = [Math.abs(to), row + 1];
    if (from * to > 0) continue;
    const s = valueAtRow(timeS, from === to ? row : row + from / (from - to));
    if (Number.isNaN(best) || Math.abs(s - nearS) < Math.abs(best - nearS)) best = s;
  }
  return clamped(frame, Number.isNaN(best) ? timeS[nearest]! : best);
}

function clamped({ sheet: { span } }: Frame, s: number): number {
  return Math.min(Math.max(s, span.startS), span.endS);
}

/** The row of a moment; null where nothing was recorded at it. */
export function recordedRow({ sheet }: Pick<Frame, 'sheet'>, s: number): number | null {
  const { timeS } = sheet.columns;
  if (s < timeS[0]! || s > timeS[timeS.length - 1]!) return null;
  const row = rowAt(sheet.columns, s);
  return sheet.columns.gapBefore[Math.ceil(row)] === 1 && row % 1 !== 0 ? null : row;
}
