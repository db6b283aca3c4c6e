import type { Column } from './lazy-column.ts';
import { clip, cutOff, cutTimes, firstAfter, firstAtOrAfter, type Polyline, type Span } from './polyline.ts';

/** About as many as one approach is asked for; those of the one before are not needed again. */
const SPANS_KEPT = 24;

interface KeptSpan extends Span {
  /** The fixes that its lines run through, from `first` to the one before `end`. */
  readonly first: number;
  readonly end: number;
  readonly fixesS: Float64Array;
  /** Their times, cut off at the span's ends; null where they are no line, or a gap parts it. */
  readonly timeS: Float64Array | null;
  /** By column, which they do not hold: its values are copied. */
  readonly lines: WeakMap<Column, readonly Polyline[]>;
}

/**
 * The lines of columns over spans, the last few of which are kept: criteria, segments and findings look at the same
 * needles over the same spans. Lines over one span share their times.
 */
export class LineMemory {
  readonly #timeS: Float64Array;
  readonly #gapLimitS: number;
  readonly #spans: KeptSpan[] = [];
  #next = 0;

  constructor(timeS: Float64Array, gapLimitS: number) {
    this.#timeS = timeS;
    this.#gapLimitS = gapLimitS;
  }

  /** As `clip`. The column has to hold what it will over the span: it is not looked at again. */
  over(column: Column, span: Span): readonly Polyline[] {
    const kept = this.#kept(span);
    const known = kept.lines.get(column);
    if (known !== undefined) return known;
    const lines = this.#linesOf(column, kept);
    kept.lines.set(column, lines);
    return lines;
  }

  /** Whether a column is known all over a span that no gap parts: then others over it have its times. */
  isWhole(column: Column, span: Span): boolean {
    const [line] = this.over(column, span);
    return line !== undefined && line.timeS === this.#kept(span).timeS;
  }

  #linesOf(column: Column, span: KeptSpan): readonly Polyline[] {
    const { fixesS, timeS } = span;
    const values = column.slice(span.first, span.end);
    if (timeS === null || !isKnown(values)) return clip(fixesS, values, span, this.#gapLimitS);
    cutOff(values, fixesS, timeS);
    return [{ timeS, value: values }];
  }

  #kept({ startS, endS }: Span): KeptSpan {
    for (let k = 0; k < this.#spans.length; k++) {
      const kept = this.#spans[k]!;
      if (kept.startS === startS && kept.endS === endS) return kept;
    }
    const first = Math.max(0, firstAfter(this.#timeS, startS) - 1);
    const end = Math.min(this.#timeS.length, firstAtOrAfter(this.#timeS, endS) + 1);
    const isLine = endS > startS && end - first > 1 && this.#hasNoGap(first, end);
    const timeS = isLine ? cutTimes(this.#timeS, first, end, { startS, endS }) : null;
    const fixesS = this.#timeS.subarray(first, end);
    const kept = { startS, endS, first, end, fixesS, timeS, lines: new WeakMap() };
    this.#spans[this.#next] = kept;
    this.#next = (this.#next + 1) % SPANS_KEPT;
    return kept;
  }

  #hasNoGap(first: number, end: number): boolean {
    for (let i = first + 1; i < end; i++)
      if (this.#timeS[i]! - this.#timeS[i - 1]! > this.#gapLimitS) return false;
    return true;
  }
}

function isKnown(values: Float64Array): boolean {
  for (let i = 0; i < values.length; i++) if (Number.isNaN(values[i]!)) return false;
  return true;
}
