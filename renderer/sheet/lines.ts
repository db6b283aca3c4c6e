import { area, line } from 'd3-shape';
import type { Row } from './rows.ts';

/** A hundred-thousandth of a sheet's width is finer than any screen or paper shows. */
const PLACES = 1;
/** So few to a pixel are drawn as they are. */
const SPARSE = 2;

type Place = (row: Row) => number;

/**
 * A run thinned to the pixels that it is drawn on: of consecutive rows in one pixel column the first, the lowest, the
 * highest and the last stay, so that no peak is lost. In the order of the run, whichever way it goes.
 */
export function thinned(run: readonly Row[], x: Place, y: Place): readonly Row[] {
  if (run.length < SPARSE * Math.abs(x(run[run.length - 1]!) - x(run[0]!))) return columnwise(run, x, y);
  return run.length > 2000 ? columnwise(run, x, y) : run;
}

function columnwise(run: readonly Row[], x: Place, y: Place): Row[] {
  const kept: Row[] = [];
  let column = NaN;
  let places: number[] = [];
  const flush = () => {
    if (places.length === 0) return;
    let low = places[0]!;
    let high = low;
    for (const i of places) {
      if (y(run[i]!) < y(run[low]!)) low = i;
      if (y(run[i]!) > y(run[high]!)) high = i;
    }
    const ends = [places[0]!, low, high, places[places.length - 1]!].sort((a, b) => a - b);
    for (const [k, i] of ends.entries()) if (k === 0 || i !== ends[k - 1]) kept.push(run[i]!);
  };
  for (let i = 0; i < run.length; i++) {
    const here = Math.floor(x(run[i]!));
    if (here !== column) {
      flush();
      places = [];
      column = here;
    }
    places.push(i);
  }
  flush();
  return kept;
}

/** A line through runs, as the path of an SVG. */
export function linePath(runs: readonly (readonly Row[])[], x: Place, y: Place): string {
  const draw = line<Row>().x(x).y(y).digits(PLACES);
  return runs.map((run) => draw(thinned(run, x, y)) ?? '').join('');
}

/** The area between two lines over runs. */
export function areaPath(runs: readonly (readonly Row[])[], x: Place, from: Place, to: Place): string {
  const draw = area<Row>().x(x).y0(from).y1(to).digits(PLACES);
  return runs.map((run) => draw(thinned(run, x, to)) ?? '').join('');
}
