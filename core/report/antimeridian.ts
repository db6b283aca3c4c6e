import { bboxClip, multiPolygon, polygon, rewind } from '@turf/turf';

/** Longitude, which may have run on past 180 or −180, latitude, and whatever else changes along a line. */
export type Vertex = readonly [lonDeg: number, latDeg: number, ...rest: number[]];

/** How many turns a longitude has run on: 0 from −180 to below 180. */
function turnOf(lonDeg: number): number {
  return Math.floor((lonDeg + 180) / 360);
}

/** A line in the parts that lie on one side of the antimeridian each, as RFC 7946 (3.1.9) would have it. */
export function cutLine(line: readonly Vertex[]): Vertex[][] {
  const parts: Vertex[][] = [];
  let before: Vertex | null = null;
  for (const vertex of line) {
    const turn = turnOf(vertex[0]);
    const turnBefore = before === null ? turn : turnOf(before[0]);
    if (before === null || turn === turnBefore) {
      if (before === null) parts.push([]);
    } else {
      const edgeDeg = 180 + 360 * Math.min(turn, turnBefore);
      const share = (edgeDeg - before[0]) / (vertex[0] - before[0]);
      const onEdge = before.map((value, i) => value + (vertex[i]! - value) * share) as unknown as Vertex;
      const atEdge = (own: number): Vertex => [edgeDeg - 360 * own, ...onEdge.slice(1)] as unknown as Vertex;
      parts.at(-1)!.push(atEdge(turnBefore));
      parts.push([atEdge(turn)]);
    }
    parts.at(-1)!.push([vertex[0] - 360 * turn, ...vertex.slice(1)] as unknown as Vertex);
    before = vertex;
  }
  return parts;
}

/** A position to a hundredth of a metre. */
export function onMap(lonDeg: number, latDeg: number): [number, number] {
  return [Math.round(lonDeg * PLACES) / PLACES, Math.round(latDeg * PLACES) / PLACES];
}

const PLACES = 1e7;

/** The same for an outline that closes, counter-clockwise as RFC 7946 (3.1.6) has it: a polygon, or several. */
export function cutOutline(ring: readonly (readonly number[])[]) {
  const lons = ring.map(([lonDeg]) => lonDeg!);
  const first = turnOf(Math.min(...lons));
  const last = turnOf(Math.max(...lons));
  const whole = polygon([ring.map((vertex) => [...vertex])]);
  const polygons = [];
  for (let turn = first; turn <= last; turn++) {
    const [west, east] = [-180 + 360 * turn, 180 + 360 * turn];
    const clipped = first === last ? whole : (rewind(bboxClip(whole, [west, -90, east, 90])) as typeof whole);
    const { coordinates } = clipped.geometry;
    if (coordinates.length === 0) continue;
    polygons.push(
      coordinates.map((one) => one.map(([lonDeg, latDeg]) => onMap(lonDeg! - 360 * turn, latDeg!))),
    );
  }
  return polygons.length === 1 ? polygon(polygons[0]!).geometry : multiPolygon(polygons).geometry;
}
