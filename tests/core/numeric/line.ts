import type { Polyline } from '../../../core/numeric/polyline.ts';

export function line(timeS: readonly number[], value: readonly number[]): Polyline {
  return { timeS: Float64Array.from(timeS), value: Float64Array.from(value) };
}

/** Values at equal intervals from time 0. */
export function every(intervalS: number, value: readonly number[]): Polyline {
  return line(
    value.map((_, i) => i * intervalS),
    value,
  );
}
