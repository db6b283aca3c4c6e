import { parseNumberIn } from './parse-number.ts';
import type { DecimalMark } from './parse-number.ts';

/**
 * One row of a table: a text and where its cells stand in it. A cell is cut out only for who asks for its text, since
 * most are but read as numbers. The same row is filled again and again while a file is read.
 */
export class Row {
  /** Number of cells. */
  length = 0;
  #text = '';
  /** Where each cell begins; a cell ends one character before the next begins. */
  readonly #starts: number[] = [];

  /** Cuts a line that holds no quotes. */
  cut(line: string, delimiter: string): void {
    let count = 0;
    let at = 0;
    do {
      this.#starts[count++] = at;
      at = line.indexOf(delimiter, at) + 1;
    } while (at > 0);
    this.#starts[count] = line.length + 1;
    this.#text = line;
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
    this.length = cells.length;
  }

  /** Text of a cell; '' where the row has no such cell. */
  text(i: number): string {
    return i < this.length ? this.#text.slice(this.#starts[i], this.#starts[i + 1]! - 1) : '';
  }

  /** The number in a cell; NaN where there is none. */
  number(i: number, mark: DecimalMark): number {
    return i < this.length
      ? parseNumberIn(this.#text, this.#starts[i]!, this.#starts[i + 1]! - 1, mark)
      : NaN;
  }

  cells(): string[] {
    return Array.from({ length: this.length }, (_, i) => this.text(i));
  }
}
