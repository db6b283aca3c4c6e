import { placeOf, range } from './searching.ts';
import type { TrueNeedle } from './true-approach.ts';
import type { ViewedFlight } from './viewed-flight.ts';

const LIMIT = 0.75;

/** A needle over a span; every tenth of a second counts alike. */
export function trueNeedle(
  view: ViewedFlight,
  needle: Float64Array,
  startS: number,
  endS: number,
): TrueNeedle {
  const values = range(placeOf(view, startS) + 1, placeOf(view, endS)).map((i) => needle[i]!);
  const mean = (of: readonly number[]): number => of.reduce((sum, v) => sum + v, 0) / of.length;
  return {
    mean: mean(values),
    rms: Math.sqrt(mean(values.map((v) => v * v))),
    largest: values.reduce((most, v) => Math.max(most, Math.abs(v)), 0),
    outsideS: mean(values.map((v) => (Math.abs(v) > LIMIT ? 1 : 0))) * (endS - startS),
  };
}
