/**
 * Values over time joined by straight lines, without a break: times strictly increasing, no NaN, two points or more.
 * All means and shares of the program are integrals of these lines, so that a log's interval does not change them.
 */
export interface Polyline {
  readonly timeS: Float64Array;
  readonly value: Float64Array;
}

export interface Span {
  readonly startS: number;
  readonly endS: number;
}

/**
 * The parts of a column within a span, with interpolated ends. An interval longer than `gapLimitS` and a value that
 * is NaN part the line.
 */
export function clip(timeS: Float64Array, values: Float64Array, span: Span, gapLimitS: number): Polyline[] {
  const parts: Polyline[] = [];
  if (span.endS <= span.startS) return parts;
  let first = -1;
  let i = Math.max(1, firstAfter(timeS, span.startS));
  let fromS = timeS[i - 1]!;
  let wasKnown = !Number.isNaN(values[i - 1]!);
  for (; i < timeS.length && fromS < span.endS; i++) {
    const toS = timeS[i]!;
    const isKnown = !Number.isNaN(values[i]!);
    const joined = wasKnown && isKnown && toS - fromS <= gapLimitS;
    fromS = toS;
    wasKnown = isKnown;
    if (joined && first === -1) first = i - 1;
    if (joined || first === -1) continue;
    parts.push(cut(timeS, values, first, i, span));
    first = -1;
  }
  if (first !== -1) parts.push(cut(timeS, values, first, i, span));
  return parts;
}

/** The times of the fixes from `first` to the one before `end`, the outer two no farther out than a span's ends. */
export function cutTimes(
  timeS: Float64Array,
  first: number,
  end: number,
  { startS, endS }: Span,
): Float64Array {
  const times = timeS.slice(first, end);
  times[0] = Math.max(startS, times[0]!);
  times[times.length - 1] = Math.min(endS, times[times.length - 1]!);
  return times;
}

/** The line through the fixes from `first` to the one before `end`, cut off at a span's ends. */
function cut(timeS: Float64Array, values: Float64Array, first: number, end: number, span: Span): Polyline {
  const value = values.slice(first, end);
  const cutS = cutTimes(timeS, first, end, span);
  cutOff(value, timeS.subarray(first, end), cutS);
  return { timeS: cutS, value };
}

/** Cuts a line's values, those at its fixes, off at the times that `cutTimes` gives. In place. */
export function cutOff(value: Float64Array, fixesS: Float64Array, cutS: Float64Array): void {
  const last = value.length - 1;
  const begins = onLine(fixesS, value, 0, cutS[0]!);
  if (cutS[last]! < fixesS[last]!) value[last] = onLine(fixesS, value, last - 1, cutS[last]!);
  value[0] = begins;
}

/** The value at a moment on the straight line from fix `i` to the next. */
function onLine(timeS: Float64Array, values: Float64Array, i: number, s: number): number {
  const risePerS = (values[i + 1]! - values[i]!) / (timeS[i + 1]! - timeS[i]!);
  return values[i]! + risePerS * (s - timeS[i]!);
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
  return valueFrom(timeS, values, firstAfter(timeS, s) - 1, s, gapLimitS);
}

/** The same, where fix `i` is the last that is not later; −1 where all are. */
export function valueFrom(
  timeS: Float64Array,
  values: Float64Array,
  i: number,
  s: number,
  gapLimitS: number,
): number {
  if (i >= 0 && timeS[i] === s) return values[i]!;
  if (i < 0 || i + 1 >= timeS.length) return NaN;
  const fromS = timeS[i]!;
  const toS = timeS[i + 1]!;
  if (toS - fromS > gapLimitS) return NaN;
  return values[i]! + (values[i + 1]! - values[i]!) * ((s - fromS) / (toS - fromS));
}

/** Duration of all parts, seconds. */
export function durationS(parts: readonly Polyline[]): number {
  return parts.reduce((sum, { timeS }) => sum + timeS[timeS.length - 1]! - timeS[0]!, 0);
}

/** The largest value on all lines; −∞ without any. */
export function largestOf(lines: readonly Polyline[]): number {
  let most = -Infinity;
  for (const { value } of lines)
    for (let i = 0; i < value.length; i++) if (value[i]! > most) most = value[i]!;
  return most;
}

/** The same lines with their values counted from a target. */
export function relativeTo(parts: readonly Polyline[], target: number): Polyline[] {
  return parts.map(({ timeS, value }) => ({ timeS, value: value.map((v) => v - target) }));
}

/** Lines of the same times at one value. */
export function constant(parts: readonly Polyline[], value: number): Polyline[] {
  return parts.map(({ timeS }) => ({ timeS, value: new Float64Array(timeS.length).fill(value) }));
}
