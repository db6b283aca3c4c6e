import { lineString, multiLineString } from '@turf/turf';
import type { Flown } from '../approach/flown.ts';
import { firstAfter, valueAt, type Span } from '../numeric/polyline.ts';
import { wrap180 } from '../units/units.ts';
import { utcText } from '../units/utc.ts';
import { cutLine, onMap, type Vertex } from './antimeridian.ts';

/** Columns of a track of which every piece is a piece of one line, longitudes running on across the antimeridian. */
export interface TrackOnMap {
  readonly timeS: Float64Array;
  readonly gapLimitS: number;
  /** Longitude, latitude, height, time: what a vertex holds. */
  readonly columns: readonly [Float64Array, Float64Array, Float64Array, Float64Array];
}

export function trackOnMap({ track, facility }: Flown): TrackOnMap {
  const { timeS, gapLimitS, lonDeg, latDeg, altitudeFt } = track;
  const nearDeg = facility.threshold.lonDeg;
  const unwrapped = lonDeg.map((lon) => nearDeg + wrap180(lon - nearDeg));
  return { timeS, gapLimitS, columns: [unwrapped, latDeg, altitudeFt, timeS] };
}

interface LinesOnMap {
  readonly geometry: ReturnType<typeof lineOnMap>;
  /** For each position, nested as the positions are. */
  readonly timesUtc: readonly unknown[];
  readonly heightsFt: readonly unknown[];
}

/**
 * What was flown in a span, its ends between fixes where they were: one line, or several where a gap or the
 * antimeridian parts it; null where nothing was recorded.
 */
export function linesBetween(track: TrackOnMap, { startS, endS }: Span): LinesOnMap | null {
  const { timeS, gapLimitS, columns } = track;
  const at = (s: number) =>
    columns.map((column) => valueAt(timeS, column, s, gapLimitS)) as unknown as Vertex;
  const first = firstAfter(timeS, startS);
  const within = timeS.slice(first, Math.max(first, firstAfter(timeS, endS)));
  const moments = [startS, ...within.filter((s) => s < endS), endS].map(at);
  const runs: Vertex[][] = [[]];
  let beforeS = NaN;
  for (const vertex of moments) {
    // Within a gap nothing is known, and across one no line is drawn.
    if (Number.isNaN(vertex[0])) continue;
    const [, , , s] = vertex as unknown as [number, number, number, number];
    if (s - beforeS > gapLimitS) runs.push([]);
    runs.at(-1)!.push(vertex);
    beforeS = s;
  }
  const parts = runs.flatMap(cutLine).filter((part) => part.length > 1);
  if (parts.length === 0) return null;
  const nested = <T>(valueOf: (vertex: Vertex) => T): readonly unknown[] => {
    const all = parts.map((part) => part.map(valueOf));
    return all.length === 1 ? all[0]! : all;
  };
  return {
    geometry: lineOnMap(parts),
    timesUtc: nested(([, , , s]) => utcText(s!)),
    heightsFt: nested(([, , ft]) => (Number.isNaN(ft) ? null : Math.round(ft! * 10) / 10)),
  };
}

/** One line as a line, several as several. */
export function lineOnMap(parts: readonly (readonly Vertex[])[]) {
  const rounded = parts.map((part) => part.map(([lonDeg, latDeg]) => onMap(lonDeg, latDeg)));
  return rounded.length === 1 ? lineString(rounded[0]!).geometry : multiLineString(rounded).geometry;
}
