const BLOCK = 1 << 13;

/**
 * Numbers that arrive one by one. With the right guess at how many there will be they are written where they stay;
 * beyond it they grow in blocks, so that growing never copies what is there already.
 */
export class NumberColumn {
  length = 0;
  #blocks: Float64Array[] = [];
  #current: Float64Array;
  #used = 0;

  /** @param expected how many numbers are likely to come; 0 when nobody knows */
  constructor(expected = 0) {
    this.#current = new Float64Array(expected > 0 ? expected : BLOCK);
  }

  push(value: number): void {
    if (this.#used === this.#current.length) {
      this.#blocks.push(this.#current);
      this.#current = new Float64Array(BLOCK);
      this.#used = 0;
    }
    this.#current[this.#used++] = value;
    this.length++;
  }

  /** All values in one array, which may be a view of a larger buffer; the column is empty afterwards. */
  take(): Float64Array {
    const last = this.#current.subarray(0, this.#used);
    const all = this.#blocks.length === 0 ? last : new Float64Array(this.length);
    let at = 0;
    for (const block of this.#blocks) {
      all.set(block, at);
      at += block.length;
    }
    if (all !== last) all.set(last, at);
    this.#blocks = [];
    this.#current = new Float64Array(0);
    this.#used = 0;
    this.length = 0;
    return all;
  }
}
