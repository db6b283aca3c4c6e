import { clip, cutTimes, type CutTimes, type Polyline, type Span } from './polyline.ts';

/** About as many as one approach is asked for; those of the one before are not needed again. */
const LINES_KEPT = 128;
const TIMES_KEPT = 16;

interface KeptLines extends Span {
  readonly lines: readonly Polyline[];
}

interface KeptTimes extends Span {
  readonly first: number;
  readonly end: number;
  readonly timeS: Float64Array;
}

/**
 * The lines of columns over spans, the last few of which are kept: criteria, segments and findings look at the same
 * needles over the same spans. Lines over one span share their times.
 */
export class LineMemory {
  readonly #timeS: Float64Array;
  readonly #gapLimitS: number;
  readonly #lines = new Map<Float64Array, KeptLines[]>();
  #linesKept = 0;
  readonly #times: KeptTimes[] = [];
  #nextTimes = 0;

  constructor(timeS: Float64Array, gapLimitS: number) {
    this.#timeS = timeS;
    this.#gapLimitS = gapLimitS;
  }

  /** As `clip`. The column has to hold what it will over the span: it is not looked at again. */
  over(values: Float64Array, span: Span): readonly Polyline[] {
    const { startS, endS } = span;
    const ofColumn = this.#lines.get(values);
    const kept = ofColumn?.find((one) => one.startS === startS && one.endS === endS);
    if (kept !== undefined) return kept.lines;
    const lines = clip(this.#timeS, values, span, this.#gapLimitS, this.#cutTimes);
    this.#keep(values, { startS, endS, lines });
    return lines;
  }

  #keep(values: Float64Array, kept: KeptLines): void {
    if (this.#linesKept === LINES_KEPT) {
      this.#lines.clear();
      this.#linesKept = 0;
    }
    const ofColumn = this.#lines.get(values);
    if (ofColumn === undefined) this.#lines.set(values, [kept]);
    else ofColumn.push(kept);
    this.#linesKept++;
  }

  readonly #cutTimes: CutTimes = (all, first, end, { startS, endS }) => {
    for (let k = 0; k < this.#times.length; k++) {
      const kept = this.#times[k]!;
      if (kept.first === first && kept.end === end && kept.startS === startS && kept.endS === endS)
        return kept.timeS;
    }
    const timeS = cutTimes(all, first, end, { startS, endS });
    this.#times[this.#nextTimes] = { first, end, startS, endS, timeS };
    this.#nextTimes = (this.#nextTimes + 1) % TIMES_KEPT;
    return timeS;
  };
}
