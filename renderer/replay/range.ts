import type { Sheet } from '../../core/sheet/sheet.ts';
import { wholeRange, type SheetView } from '../sheet/frame.ts';

type Range = readonly [number, number];

/** Closer than this nothing more is to be seen: a fifth of a mile, or ten seconds. */
const LEAST = { distance: 0.2, time: 10 };

/** A range so many times as wide about a place in it, and no wider than the whole. */
export function zoomed(
  sheet: Sheet,
  axis: SheetView['axis'],
  range: Range,
  times: number,
  about: number,
): Range {
  const whole = wholeRange(sheet, axis);
  const wide = Math.abs(range[1] - range[0]);
  const wanted = Math.min(Math.max(wide * times, LEAST[axis]), Math.abs(whole[1] - whole[0]));
  const factor = wanted / wide;
  return within(whole, [about + (range[0] - about) * factor, about + (range[1] - about) * factor]);
}

/** A range moved by a share of its width, as far as the whole goes. */
export function panned(sheet: Sheet, axis: SheetView['axis'], range: Range, share: number): Range {
  const by = (range[1] - range[0]) * share;
  return within(wholeRange(sheet, axis), [range[0] + by, range[1] + by]);
}

function within(whole: Range, [from, to]: Range): Range {
  const sign = Math.sign(whole[1] - whole[0]);
  const early = sign * (whole[0] - from);
  if (early > 0) return [whole[0], clampTo(whole, to + sign * early)];
  const late = sign * (to - whole[1]);
  if (late > 0) return [clampTo(whole, from - sign * late), whole[1]];
  return [from, to];
}

function clampTo(whole: Range, value: number): number {
  return Math.min(Math.max(value, Math.min(...whole)), Math.max(...whole));
}

/** The parts of an approach that are looked at most, on an axis; null for one that was not flown. */
export function partOf(
  sheet: Sheet,
  axis: SheetView['axis'],
  part: 'whole' | 'final' | 'last',
): Range | null {
  const whole = wholeRange(sheet, axis);
  if (part === 'whole') return whole;
  const final = sheet.segments.find(({ kind }) => kind === 'final');
  if (!final) return null;
  const { distanceNm, timeS } = sheet.columns;
  const startRow = timeS.findIndex((s) => s >= final.startS);
  if (axis === 'time') {
    const from = part === 'final' ? final.startS : (timeS.find((_, i) => distanceNm[i]! <= LAST_NM) ?? NaN);
    return from < whole[1] ? [from, whole[1]] : null;
  }
  const from = part === 'final' ? distanceNm[startRow]! + 0.1 : LAST_NM;
  return from > whole[1] ? [Math.min(from, whole[0]), whole[1]] : null;
}

const LAST_NM = 3;
