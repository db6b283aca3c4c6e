const BLOCK = 1 << 13;
const NOTHING = new Float64Array(0);

/**
 * Numbers that arrive one by one. With the right guess at how many there will be they are written where they stay;
 * beyond it they grow in blocks, so that growing never copies what is there already. Until the first number comes,
 * NaN takes no memory: most logs name quantities that they do not hold.
 */
export class NumberColumn {
  length = 0;
  readonly #expected: number;
  #blocks: Float64Array[] = [];
  #current: Float64Array = NOTHING;
  #used = 0;

  /** @param expected how many numbers are likely to come; 0 when nobody knows */
  constructor(expected = 0) {
    this.#expected = expected;
  }

  /** Whether nothing but NaN has come, or nothing at all. */
  get isVoid(): boolean {
    return this.#current === NOTHING;
  }

  push(value: number): void {
    if (this.#used === this.#current.length) {
      if (this.isVoid && Number.isNaN(value)) {
        this.length++;
        return;
      }
      this.#makeRoom();
    }
    this.#current[this.#used++] = value;
    this.length++;
  }

  #makeRoom(): void {
    if (this.isVoid) {
      this.#current = new Float64Array(Math.max(this.#expected, this.length + BLOCK));
      this.#current.fill(NaN, 0, this.length);
      this.#used = this.length;
    } else {
      this.#blocks.push(this.#current);
      this.#current = new Float64Array(BLOCK);
      this.#used = 0;
    }
  }

  /** All values in one array, which may be a view of a larger buffer; the column is empty afterwards. */
  take(): Float64Array {
    const last = this.isVoid
      ? new Float64Array(this.length).fill(NaN)
      : this.#current.subarray(0, this.#used);
    const all = this.#blocks.length === 0 ? last : new Float64Array(this.length);
    let at = 0;
    for (const block of this.#blocks) {
      all.set(block, at);
      at += block.length;
    }
    if (all !== last) all.set(last, at);
    this.#blocks = [];
    this.#current = NOTHING;
    this.#used = 0;
    this.length = 0;
    return all;
  }
}
