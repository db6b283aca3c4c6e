import { scaleLinear, type ScaleLinear } from 'd3-scale';
import type { Span } from '../../core/numeric/polyline.ts';
import type { Sheet } from '../../core/sheet/sheet.ts';
import { rowAt, valueAtRow, type Row } from './rows.ts';
import { stripsOf, type Strip, type ScaleWords } from './strips.ts';
import { altitudeDomain, offsetDomain } from './domains.ts';

/** What of a sheet is looked at, and how. */
export interface SheetView {
  readonly axis: 'distance' | 'time';
  /** From the left edge to the right one: NM before the threshold, falling, or seconds, rising. */
  readonly range: readonly [number, number];
  readonly widthPx: number;
  /** As tall as the sheet is to be, where its panels stay readable; null for their usual height. */
  readonly heightPx: number | null;
  readonly scale: ScaleWords;
  /** Strips of what else was logged. */
  readonly extras: boolean;
  /** Needles as the log recorded them, over the computed ones. */
  readonly recorded: boolean;
  /** A dot for every fix. */
  readonly fixes: boolean;
}

type Scale = ScaleLinear<number, number>;

export interface Panel {
  readonly top: number;
  readonly height: number;
  readonly y: Scale;
}

export interface StripPanel extends Panel {
  readonly strip: Strip;
}

/** Where everything stands, in pixels: one x for all panels. */
export interface Frame {
  readonly sheet: Sheet;
  readonly view: SheetView;
  readonly left: number;
  readonly right: number;
  readonly width: number;
  readonly height: number;
  readonly x: Scale;
  readonly xOfRow: (row: Row) => number;
  readonly xOfTime: (s: number) => number;
  /** The rows that are within the range, or around it. */
  readonly seen: Span;
  readonly profile: Panel;
  readonly plan: Panel;
  readonly strips: readonly StripPanel[];
}

const LEFT = 64;
const RIGHT = 14;
const HEAD = 87;
/** For the title of the next panel. */
const SPACE = 19;
const PROFILE = 180;
const PLAN = 104;
const STRIP = 66;
const EXTRA_STRIP = 42;
const FOOT = 6;
/** Panels shrink and grow no farther than this. */
const SHORTEST = 0.6;
const TALLEST = 1.7;

/**
 * Places are told to a hundredth of a pixel: engines differ in the last digits of a tangent, and the same sheet is to
 * be the same to the last byte.
 */
const toHundredths = (from: number, to: number) => (share: number) =>
  Math.round((from + (to - from) * share) * 100) / 100;

function scaleOf(domain: readonly [number, number], range: readonly [number, number]): Scale {
  return scaleLinear(domain, range).interpolate(toHundredths);
}

/** Puts the panels of a sheet under one another. */
export function frameOf(sheet: Sheet, view: SheetView): Frame {
  const right = view.widthPx - RIGHT;
  const x = scaleOf(view.range, [LEFT, right]);
  const column = view.axis === 'distance' ? sheet.columns.distanceNm : sheet.columns.timeS;
  const xOfRow = (row: Row) => x(valueAtRow(column, row));
  const seen = seenSpan(sheet, view);
  const strips = stripsOf(sheet, view, seen);
  const times = stretch(view, [PROFILE, PLAN, ...strips.map(usualHeight)]);
  let top = HEAD;
  const panel = (usual: number, domain: readonly [number, number]): Panel => {
    const height = usual * times;
    const placed = { top, height, y: scaleOf(domain, [top + height, top]) };
    top += height + SPACE;
    return placed;
  };
  const profile = panel(PROFILE, altitudeDomain(sheet, seen));
  // Right of course is drawn below, as it lies for who flies from left to right.
  const [leftFt, rightFt] = offsetDomain(sheet, seen);
  const plan = panel(PLAN, [rightFt, leftFt]);
  const stripPanels = strips.map((strip) => ({ strip, ...panel(usualHeight(strip), strip.domain) }));
  return {
    sheet,
    view,
    left: LEFT,
    right,
    width: view.widthPx,
    height: top - SPACE + FOOT,
    x,
    xOfRow,
    xOfTime: (s) => xOfRow(rowAt(sheet.columns, s)),
    seen,
    profile,
    plan,
    strips: stripPanels,
  };
}

function usualHeight({ isExtra }: Strip): number {
  return isExtra ? EXTRA_STRIP : STRIP;
}

/** How much taller than usual the panels are, so that all of them have the height that is wanted. */
function stretch({ heightPx }: SheetView, usual: readonly number[]): number {
  if (heightPx === null) return 1;
  const fixed = HEAD + SPACE * (usual.length - 1) + FOOT;
  const panels = usual.reduce((sum, height) => sum + height, 0);
  return Math.min(Math.max((heightPx - fixed) / panels, SHORTEST), TALLEST);
}

/** The first and the last moment at which the aircraft was within the range. */
function seenSpan({ columns, span }: Sheet, { axis, range }: SheetView): Span {
  const { timeS, distanceNm } = columns;
  if (axis === 'time') return { startS: range[0], endS: range[1] };
  const low = Math.min(...range);
  const high = Math.max(...range);
  const inside = (nm: number | undefined) => nm !== undefined && nm >= low && nm <= high;
  let first = -1;
  let last = -1;
  for (let i = 0; i < timeS.length; i++) {
    if (!inside(distanceNm[i])) continue;
    if (first === -1) first = i;
    last = i;
  }
  if (first === -1) return span;
  return {
    startS: Math.max(span.startS, timeS[Math.max(0, first - 1)]!),
    endS: Math.min(span.endS, timeS[Math.min(timeS.length - 1, last + 1)]!),
  };
}

/** The range of the whole approach on an axis. */
export function wholeRange({ columns, span }: Sheet, axis: SheetView['axis']): [number, number] {
  if (axis === 'time') return [span.startS, span.endS];
  let farthest = -Infinity;
  let nearest = Infinity;
  for (const nm of columns.distanceNm) {
    farthest = Math.max(farthest, nm);
    nearest = Math.min(nearest, nm);
  }
  const margin = Math.max(0.1, (farthest - nearest) * 0.02);
  return [farthest + margin, Math.max(Math.min(nearest - margin, PAST_THRESHOLD_NM), LEAST_NM)];
}

/** The runway's beginning is always there, wherever the approach ended. */
const PAST_THRESHOLD_NM = -0.15;
/** The whole approach by miles, in dots and without anything laid over it, but for what is said. */
export function wholeView(sheet: Sheet, said: Partial<SheetView> & Pick<SheetView, 'widthPx'>): SheetView {
  const { axis = 'distance' } = said;
  return {
    axis,
    range: wholeRange(sheet, axis),
    heightPx: null,
    scale: 2,
    extras: false,
    recorded: false,
    fixes: false,
    ...said,
  };
}

/** A missed approach is followed so far past the threshold on the distance axis, so that the final stays readable. */
const LEAST_NM = -2.5;
