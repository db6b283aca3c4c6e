import { firstAfter, type Span } from './polyline.ts';

/** Small enough that little is worked out in vain, large enough that asking costs next to nothing. */
const BLOCK_BITS = 8;
const BLOCK = 1 << BLOCK_BITS;

/** Works out the values from `first` to the one before `end` and writes them into a column. */
export type Fill = (values: Float64Array, first: number, end: number) => void;

/**
 * A column whose values are worked out block by block, when one of a block is first asked for: approaches are a small
 * part of a long log. What is not asked for costs no memory either, since pages of zeros are made when they are
 * written to.
 */
export class LazyColumn {
  readonly #values: Float64Array;
  readonly #known: Uint8Array;
  readonly #fill: Fill;

  constructor(count: number, fill: Fill) {
    this.#values = new Float64Array(count);
    this.#known = new Uint8Array(Math.ceil(count / BLOCK));
    this.#fill = fill;
  }

  /** The value at a place; NaN outside the column. */
  at(i: number): number {
    if (!(i >= 0 && i < this.#values.length)) return NaN;
    if (this.#known[i >> BLOCK_BITS] === 0) this.#work(i >> BLOCK_BITS);
    return this.#values[i]!;
  }

  /** The whole column, of which only what is needed on the lines over a span of these times is sure to be there. */
  within(timeS: Float64Array, { startS, endS }: Span): Float64Array {
    const last = Math.min(firstAfter(timeS, endS), this.#values.length - 1);
    for (
      let block = Math.max(0, firstAfter(timeS, startS) - 1) >> BLOCK_BITS;
      block <= last >> BLOCK_BITS;
      block++
    )
      if (this.#known[block] === 0) this.#work(block);
    return this.#values;
  }

  #work(block: number): void {
    const first = block * BLOCK;
    this.#fill(this.#values, first, Math.min(first + BLOCK, this.#values.length));
    this.#known[block] = 1;
  }
}
