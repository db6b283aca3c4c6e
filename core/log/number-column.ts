const BLOCK = 1 << 13;

/** Numbers that arrive one by one. They grow in blocks, so that growing never copies what is there already. */
export class NumberColumn {
  length = 0;
  #blocks: Float64Array[] = [];
  #current = new Float64Array(BLOCK);
  #used = 0;

  push(value: number): void {
    if (this.#used === BLOCK) {
      this.#blocks.push(this.#current);
      this.#current = new Float64Array(BLOCK);
      this.#used = 0;
    }
    this.#current[this.#used++] = value;
    this.length++;
  }

  /** All values in one array; the column is empty afterwards, so that the two do not stand side by side for long. */
  take(): Float64Array {
    const all = new Float64Array(this.length);
    let at = 0;
    for (const block of this.#blocks) {
      all.set(block, at);
      at += BLOCK;
    }
    all.set(this.#current.subarray(0, this.#used), at);
    this.#blocks = [];
    this.#current = new Float64Array(0);
    this.#used = BLOCK;
    this.length = 0;
    return all;
  }
}
