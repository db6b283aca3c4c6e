/**
 * The moment under the cursor, seconds since 1970. Kept apart from React's state: it moves up to sixty times a second,
 * and nothing but the cursor and the values beside the sheet may be drawn anew for it.
 */
export class Moment {
  #s: number;
  readonly #listeners = new Set<() => void>();

  constructor(s: number) {
    this.#s = s;
  }

  readonly get = (): number => this.#s;

  set(s: number): void {
    if (s === this.#s || Number.isNaN(s)) return;
    this.#s = s;
    for (const listener of this.#listeners) listener();
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };
}
