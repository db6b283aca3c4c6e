import type { Polyline } from './polyline.ts';

/**
 * Indices of the points at which a line bends: between two of them it lies no farther than `within` from straight, in
 * its value. Its first and its last point are always among them. (Douglas and Peucker 1973; from memory.)
 */
export function bendsOf(line: Polyline, within: number): number[] {
  const last = line.value.length - 1;
  return [0, ...bendsBetween(line, 0, last, within), last];
}

function bendsBetween(line: Polyline, from: number, to: number, within: number): number[] {
  const { timeS, value } = line;
  const risePerS = (value[to]! - value[from]!) / (timeS[to]! - timeS[from]!);
  let farthest = -1;
  let most = within;
  for (let i = from + 1; i < to; i++) {
    const off = Math.abs(value[i]! - value[from]! - risePerS * (timeS[i]! - timeS[from]!));
    if (off <= most) continue;
    farthest = i;
    most = off;
  }
  if (farthest < 0) return [];
  return [
    ...bendsBetween(line, from, farthest, within),
    farthest,
    ...bendsBetween(line, farthest, to, within),
  ];
}
