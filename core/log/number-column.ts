const BLOCK = 1 << 13;
const NOTHING = new Float64Array(0);

/**
 * Numbers that arrive one by one. With the right guess at how many there will be they are written where they stay;
 * beyond it they grow in blocks, so that growing never copies what is there already. Until the first number comes,
 * NaN takes no memory: most logs name quantities that they do not hold.
 */
export class NumberColumn {
  readonly #expected: number;
  #blocks: Float64Array[] = [];
  #current: Float64Array = NOTHING;
  #room = 0;
  #used = 0;
  /** Numbers in full blocks; before the first block, NaN that take no memory. */
  #before = 0;

  /** @param expected how many numbers are likely to come; 0 when nobody knows */
  constructor(expected = 0) {
    this.#expected = expected;
  }

  get length(): number {
    return this.#before + this.#used;
  }

  /** Whether nothing but NaN has come, or nothing at all. */
  get isVoid(): boolean {
    return this.#current === NOTHING;
  }

  push(value: number): void {
    if (this.#used === this.#room) {
      if (this.isVoid && Number.isNaN(value)) {
        this.#before++;
        return;
      }
      this.#makeRoom();
    }
    this.#current[this.#used++] = value;
  }

  #makeRoom(): void {
    if (this.isVoid) {
      this.#current = new Float64Array(Math.max(this.#expected, this.#before + BLOCK));
      this.#current.fill(NaN, 0, this.#before);
      this.#used = this.#before;
      this.#before = 0;
    } else {
      this.#blocks.push(this.#current);
      this.#before += this.#used;
      this.#current = new Float64Array(BLOCK);
      this.#used = 0;
    }
    this.#room = this.#current.length;
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
    this.#room = 0;
    this.#used = 0;
    this.#before = 0;
    return all;
  }
}
