/** Small enough that little is worked out in vain, large enough that asking costs next to nothing. */
const BLOCK_BITS = 8;
const BLOCK = 1 << BLOCK_BITS;

/** Works out the values from place `first` on and writes them into a block, as many as it has room for. */
export type Fill = (block: Float64Array, first: number) => void;

/** What lines are cut out of: a column as it stands, or one that is worked out as it is asked for. */
export interface Column {
  /** A copy of the values from `first` to the one before `end`; both have to lie within the column. */
  slice(first: number, end: number): Float64Array;
}

/**
 * A column whose values are worked out block by block, when one of a block is first asked for: approaches are a small
 * part of a long log. What is not asked for takes no memory either.
 */
export class LazyColumn implements Column {
  readonly #count: number;
  readonly #fill: Fill;
  readonly #blocks: (Float64Array | undefined)[];

  constructor(count: number, fill: Fill) {
    this.#count = count;
    this.#fill = fill;
    this.#blocks = Array.from({ length: Math.ceil(count / BLOCK) });
  }

  /** The value at a place; NaN outside the column. */
  at(i: number): number {
    if (!(i >= 0 && i < this.#count)) return NaN;
    return this.#block(i >> BLOCK_BITS)[i & (BLOCK - 1)]!;
  }

  slice(first: number, end: number): Float64Array {
    const values = new Float64Array(Math.max(0, end - first));
    for (let from = first; from < end;) {
      const begins = from & ~(BLOCK - 1);
      const to = Math.min(end, begins + BLOCK);
      const block = this.#block(begins >> BLOCK_BITS);
      for (let i = from; i < to; i++) values[i - first] = block[i - begins]!;
      from = to;
    }
    return values;
  }

  #block(k: number): Float64Array {
    return (this.#blocks[k] ??= this.#worked(k * BLOCK));
  }

  #worked(first: number): Float64Array {
    const block = new Float64Array(Math.min(BLOCK, this.#count - first));
    this.#fill(block, first);
    return block;
  }
}
