/**
 * Values over time joined by straight lines, without a break: times strictly increasing, no NaN, two points or more.
 * All means and shares of the program are integrals of these lines, so that a log's interval does not change them.
 */
export interface Polyline {
  readonly timeS: readonly number[];
  readonly value: readonly number[];
}

export interface Span {
  readonly startS: number;
  readonly endS: number;
}

/**
 * The parts of a column within a span, with interpolated ends. An interval longer than `gapLimitS` and a value that
 * is NaN part the line.
 */
export function clip(
  timeS: Float64Array,
  values: Float64Array,
  { startS, endS }: Span,
  gapLimitS: number,
): Polyline[] {
  const parts: { timeS: number[]; value: number[] }[] = [];
  if (endS <= startS) return parts;
  let part: { timeS: number[]; value: number[] } | null = null;
  for (let i = Math.max(1, firstAfter(timeS, startS)); i < timeS.length && timeS[i - 1]! < endS; i++) {
    const fromS = timeS[i - 1]!;
    const toS = timeS[i]!;
    const rise = values[i]! - values[i - 1]!;
    if (toS - fromS > gapLimitS || Number.isNaN(rise)) {
      part = null;
      continue;
    }
    const risePerS = rise / (toS - fromS);
    const cutEndS = Math.min(endS, toS);
    if (part === null) {
      const cutStartS = Math.max(startS, fromS);
      part = { timeS: [cutStartS], value: [values[i - 1]! + risePerS * (cutStartS - fromS)] };
      parts.push(part);
    }
    part.timeS.push(cutEndS);
    part.value.push(cutEndS === toS ? values[i]! : values[i - 1]! + risePerS * (cutEndS - fromS));
  }
  return parts;
}

/** Index of the first time later than `s`; the length when there is none. Binary search. */
export function firstAfter(timeS: Float64Array, s: number): number {
  let low = 0;
  let high = timeS.length;
  while (low < high) {
    const mid = (low + high) >> 1;
    if (timeS[mid]! <= s) low = mid + 1;
    else high = mid;
  }
  return low;
}

/** Index of the first time at or later than `s`; the length when there is none. */
export function firstAtOrAfter(timeS: Float64Array, s: number): number {
  const after = firstAfter(timeS, s);
  return after > 0 && timeS[after - 1] === s ? after - 1 : after;
}

/**
 * The value at a moment, on the straight line between the fixes around it; NaN outside the track, across a gap and
 * beside a value that is missing.
 */
export function valueAt(timeS: Float64Array, values: Float64Array, s: number, gapLimitS: number): number {
  const after = firstAfter(timeS, s);
  if (after > 0 && timeS[after - 1] === s) return values[after - 1]!;
  if (after === 0 || after === timeS.length) return NaN;
  const fromS = timeS[after - 1]!;
  const toS = timeS[after]!;
  if (toS - fromS > gapLimitS) return NaN;
  return values[after - 1]! + (values[after]! - values[after - 1]!) * ((s - fromS) / (toS - fromS));
}

/** Duration of all parts, seconds. */
export function durationS(parts: readonly Polyline[]): number {
  return parts.reduce((sum, { timeS }) => sum + timeS.at(-1)! - timeS[0]!, 0);
}

/** The same lines with their values counted from a target. */
export function relativeTo(parts: readonly Polyline[], target: number): Polyline[] {
  return parts.map(({ timeS, value }) => ({ timeS, value: value.map((v) => v - target) }));
}
