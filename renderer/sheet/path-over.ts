import type { PathPoint } from '../../core/sheet/sheet.ts';
import type { Frame } from './frame.ts';

interface PlacedPath {
  readonly x: number;
  readonly path: PathPoint;
}

/**
 * The path over a frame. Over miles it is as it stands; over time it is what stood below and above the aircraft at
 * each moment, by its distance then.
 */
export function pathOver({ sheet, view, x, xOfRow }: Frame): PlacedPath[] {
  const { path } = sheet.beam;
  if (view.axis === 'distance') return path.map((point) => ({ x: x(point.distanceNm), path: point }));
  const { distanceNm } = sheet.columns;
  const placed: PlacedPath[] = [];
  let lastX = -Infinity;
  for (let row = 0; row < distanceNm.length; row++) {
    const at = xOfRow(row);
    const point = pathAt(path, distanceNm[row]!);
    if (point === null || at - lastX < 1) continue;
    placed.push({ x: at, path: point });
    lastX = at;
  }
  return placed;
}

function pathAt(path: readonly PathPoint[], nm: number): PathPoint | null {
  const step = path[1]!.distanceNm;
  const below = Math.floor(nm / step);
  const [a, b] = [path[below], path[below + 1]];
  if (!a || !b) return null;
  const part = nm / step - below;
  const mix = (from: number, to: number) => from + (to - from) * part;
  const mixAll = (from: PathPoint['upFt'], to: PathPoint['upFt']) =>
    from.map((feet, i) => mix(feet, to[i]!)) as unknown as PathPoint['upFt'];
  return {
    distanceNm: nm,
    altitudeFt: mix(a.altitudeFt, b.altitudeFt),
    upFt: mixAll(a.upFt, b.upFt),
    downFt: mixAll(a.downFt, b.downFt),
  };
}
