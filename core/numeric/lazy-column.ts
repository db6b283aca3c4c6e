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
  readonly #count: number;
  readonly #fill: Fill;
  /** Made when something is first asked for: of some columns of a flight nothing ever is. */
  #values = new Float64Array(0);
  readonly #known: Uint8Array;

  constructor(count: number, fill: Fill) {
    this.#count = count;
    this.#fill = fill;
    this.#known = new Uint8Array(Math.ceil(count / BLOCK));
  }

  /** The value at a place; NaN outside the column. */
  at(i: number): number {
    if (!(i >= 0 && i < this.#count)) return NaN;
    if (this.#known[i >> BLOCK_BITS] === 0) this.#work(i >> BLOCK_BITS);
    return this.#values[i]!;
  }

  /** The whole column, of which only what is needed on the lines over a span of these times is sure to be there. */
  within(timeS: Float64Array, { startS, endS }: Span): Float64Array {
    const last = Math.min(firstAfter(timeS, endS), this.#count - 1);
    for (
      let block = Math.max(0, firstAfter(timeS, startS) - 1) >> BLOCK_BITS;
      block <= last >> BLOCK_BITS;
      block++
    )
      if (this.#known[block] === 0) this.#work(block);
    return this.#values;
  }

  #work(block: number): void {
    if (this.#values.length === 0) this.#values = new Float64Array(this.#count);
    const first = block * BLOCK;
    this.#fill(this.#values, first, Math.min(first + BLOCK, this.#count));
    this.#known[block] = 1;
  }
}
