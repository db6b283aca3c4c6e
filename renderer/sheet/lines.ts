import { area, line } from 'd3-shape';
import type { Row } from './rows.ts';

/** A tenth of a pixel is finer than any screen or paper shows. */
const PLACES = 1;
/** So few to a pixel are looked at one by one. */
const SPARSE = 2;
/** A line so near to straight is drawn straight, in pixels. */
const STRAIGHT = 0.1;

type Place = (row: Row) => number;

/**
 * A run thinned to the pixels that it is drawn on: of consecutive rows in one pixel column the first, the lowest, the
 * highest and the last stay, so that no peak is lost, and of those on a straight line its ends. In the order of the
 * run, whichever way it goes. An area has two edges, and both are kept.
 */
export function thinned(run: readonly Row[], x: Place, ...edges: readonly Place[]): readonly Row[] {
  const [first, last] = [run[0], run[run.length - 1]];
  if (first === undefined || last === undefined) return run;
  const isSparse = run.length < SPARSE * Math.abs(x(last) - x(first));
  return bendsOf(isSparse ? run : columnwise(run, x, edges), x, edges);
}

function columnwise(run: readonly Row[], x: Place, edges: readonly Place[]): Row[] {
  const kept: Row[] = [];
  let column = NaN;
  let begin = 0;
  for (let i = 0; i <= run.length; i++) {
    const here = i < run.length ? Math.floor(x(run[i]!)) : NaN;
    if (here === column) continue;
    if (i > 0) for (const k of extremes(run, begin, i, edges)) kept.push(run[k]!);
    column = here;
    begin = i;
  }
  return kept;
}

/** First, lowest, highest and last of the places from `begin` to before `end`, each once and in their order. */
function extremes(run: readonly Row[], begin: number, end: number, edges: readonly Place[]): number[] {
  const found = new Set([begin, end - 1]);
  for (const y of edges) {
    let low = begin;
    let high = begin;
    for (let i = begin; i < end; i++) {
      if (y(run[i]!) < y(run[low]!)) low = i;
      if (y(run[i]!) > y(run[high]!)) high = i;
    }
    found.add(low).add(high);
  }
  return [...found].sort((a, b) => a - b);
}

/** The rows at which a line or an edge bends, with the first and the last. (Douglas and Peucker 1973; from memory.) */
function bendsOf(run: readonly Row[], x: Place, edges: readonly Place[]): Row[] {
  const xs = Float64Array.from(run, x);
  const lines = edges.map((y) => Float64Array.from(run, y));
  const kept = new Uint8Array(run.length);
  kept[0] = kept[run.length - 1] = 1;
  const open: [from: number, to: number][] = [[0, run.length - 1]];
  for (let part = open.pop(); part; part = open.pop()) {
    const [from, to] = part;
    let most = STRAIGHT;
    let farthest = -1;
    for (const ys of lines)
      for (let i = from + 1; i < to; i++) {
        const off = distance(xs, ys, i, from, to);
        if (off > most) [most, farthest] = [off, i];
      }
    if (farthest === -1) continue;
    kept[farthest] = 1;
    open.push([from, farthest], [farthest, to]);
  }
  return run.filter((_, i) => kept[i] === 1);
}

/** Of point `i` from the piece of line between two others. */
function distance(xs: Float64Array, ys: Float64Array, i: number, from: number, to: number): number {
  const [dx, dy] = [xs[to]! - xs[from]!, ys[to]! - ys[from]!];
  const [px, py] = [xs[i]! - xs[from]!, ys[i]! - ys[from]!];
  const square = dx * dx + dy * dy;
  // Where a line turns back, what it reached beyond its ends counts as well.
  const share = square === 0 ? 0 : Math.min(1, Math.max(0, (px * dx + py * dy) / square));
  return Math.hypot(px - share * dx, py - share * dy);
}

/** A line through runs, as the path of an SVG. */
export function linePath(runs: readonly (readonly Row[])[], x: Place, y: Place): string {
  const draw = line<Row>().x(x).y(y).digits(PLACES);
  return runs.map((run) => draw(thinned(run, x, y)) ?? '').join('');
}

/** The area between two lines over runs. */
export function areaPath(runs: readonly (readonly Row[])[], x: Place, from: Place, to: Place): string {
  const draw = area<Row>().x(x).y0(from).y1(to).digits(PLACES);
  return runs.map((run) => draw(thinned(run, x, from, to)) ?? '').join('');
}
