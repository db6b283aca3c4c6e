import { CharCodes } from './char-codes.ts';
import { parseNumberIn } from './parse-number.ts';
import type { DecimalMark } from './parse-number.ts';

const NOTHING = new Uint8Array(0);

/**
 * One row of a table: a text and where its cells stand in it. A cell is cut out only for who asks for its text, since
 * most are but read as numbers. The same row is filled again and again while a file is read.
 */
export class Row {
  /** Number of cells. */
  length = 0;
  #text = '';
  #codes: Uint8Array = NOTHING;
  /** Where each cell begins; a cell ends one character before the next begins. */
  readonly #starts: number[] = [];
  /** Of cells that something else has cut. */
  readonly #ownCodes = new CharCodes();

  /**
   * Cuts a line that holds no quotes and stands in a text, whose codes are given, from one place to before another. The
   * codes have to stay as they are until the next row is cut.
   */
  cut(text: string, codes: Uint8Array, from: number, to: number, delimiter: number): void {
    const starts = this.#starts;
    let count = 0;
    starts[count++] = from;
    for (let at = from; at < to; at++) if (codes[at] === delimiter) starts[count++] = at + 1;
    starts[count] = to + 1;
    this.#text = text;
    this.#codes = codes;
    this.length = count;
  }

  /** Takes cells that something else has cut. */
  take(cells: readonly string[]): void {
    let at = 0;
    for (let i = 0; i < cells.length; i++) {
      this.#starts[i] = at;
      at += cells[i]!.length + 1;
    }
    this.#starts[cells.length] = at;
    this.#text = cells.join('\n');
    this.#codes = this.#ownCodes.of(this.#text);
    this.length = cells.length;
  }

  /** Text of a cell; '' where the row has no such cell. */
  text(i: number): string {
    return i < this.length ? this.#text.slice(this.#starts[i], this.#starts[i + 1]! - 1) : '';
  }

  /** The number in a cell; NaN where there is none. */
  number(i: number, mark: DecimalMark): number {
    return i < this.length
      ? parseNumberIn(this.#text, this.#codes, this.#starts[i]!, this.#starts[i + 1]! - 1, mark)
      : NaN;
  }

  cells(): string[] {
    return Array.from({ length: this.length }, (_, i) => this.text(i));
  }
}
