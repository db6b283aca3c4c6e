import { clip, cut, cutTimes, firstAfter, firstAtOrAfter, type Polyline, type Span } from './polyline.ts';

/** About as many as one approach is asked for; those of the one before are not needed again. */
const SPANS_KEPT = 24;

interface KeptSpan extends Span {
  /** The fixes that its lines run through, from `first` to the one before `end`. */
  readonly first: number;
  readonly end: number;
  /** Their times, cut off at the span's ends; null where they are no line, or a gap parts it. */
  readonly timeS: Float64Array | null;
  /** By column, which they do not hold: its values are copied. */
  readonly lines: WeakMap<Float64Array, readonly Polyline[]>;
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
  over(values: Float64Array, span: Span): readonly Polyline[] {
    const kept = this.#kept(span);
    const known = kept.lines.get(values);
    if (known !== undefined) return known;
    const { first, end, timeS } = kept;
    const lines =
      timeS !== null && isKnown(values, first, end)
        ? [cut(this.#timeS, values, first, end, timeS)]
        : clip(this.#timeS, values, span, this.#gapLimitS);
    kept.lines.set(values, lines);
    return lines;
  }

  /** Whether a column is known all over a span that no gap parts: then others over it have its times. */
  isWhole(values: Float64Array, span: Span): boolean {
    const [line] = this.over(values, span);
    return line !== undefined && line.timeS === this.#kept(span).timeS;
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
    const kept = { startS, endS, first, end, timeS, lines: new WeakMap() };
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

function isKnown(values: Float64Array, first: number, end: number): boolean {
  for (let i = first; i < end; i++) if (Number.isNaN(values[i]!)) return false;
  return true;
}
