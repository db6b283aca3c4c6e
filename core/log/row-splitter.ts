import Papa from 'papaparse';
import { CharCodes } from './char-codes.ts';
import { Row } from './row.ts';

export interface CsvShape {
  readonly delimiter: string;
  readonly quote: string;
  readonly newline: '\n' | '\r';
}

/** No line of a track log is longer, nor a row over several lines; a file without line ends must not fill the memory. */
export const LINE_MAX_CHARS = 1 << 20;
/** Physical lines that one quoted cell may run over. */
const QUOTED_LINES_MAX = 16;

export interface RowTaker {
  /**
   * One row, good until the next call, and the physical line that it begins on. `unfinished`: it ends the file without
   * a line end.
   */
  row(row: Row, line: number, unfinished: boolean): void;
  /** A physical line given up because a quote in it is never closed. */
  unclosedQuote(line: number): void;
}

/**
 * Cuts text that arrives in blocks into rows of cells. Only a line that holds a quote goes through the parser, alone:
 * a stray quote costs its own line and not the rest of the file.
 */
export class RowSplitter {
  /** The physical line, counted from 1, that what comes next begins on. */
  line = 1;
  /** Set when a line was longer than `LINE_MAX_CHARS`; nothing more is cut then. */
  tooLong = false;
  readonly #shape: CsvShape;
  #parser: InstanceType<typeof Papa.Parser> | null = null;
  readonly #taker: RowTaker;
  readonly #cellsExpected: number;
  readonly #row = new Row();
  readonly #codes = new CharCodes();
  #rest = '';

  /** @param cellsExpected cells that a row over several lines must have to be believed; 0 while that is not known */
  constructor(shape: CsvShape, taker: RowTaker, cellsExpected: number) {
    this.#shape = shape;
    this.#cellsExpected = cellsExpected;
    this.#taker = taker;
  }

  /** Takes the next block; `last` when none follows. */
  push(block: string, last: boolean): void {
    if (this.tooLong) return;
    const text = this.#rest + block;
    this.#rest = text.slice(this.#cut(text, last));
  }

  /** Cuts off row by row, so that the cells of one are gone before the next is cut. Where what remains begins. */
  #cut(text: string, last: boolean): number {
    const { delimiter, quote } = this.#shape;
    const hasQuotes = text.includes(quote);
    const codes = this.#codes.of(text);
    const delimiterCode = delimiter.charCodeAt(0);
    let at = 0;
    while (at < text.length) {
      const end = this.#lineEnd(text, at);
      this.tooLong = end - at > LINE_MAX_CHARS;
      if (this.tooLong || (end === text.length && !last)) break;
      if (hasQuotes && text.slice(at, end).includes(quote)) {
        const next = this.#quotedRow(text, at, last);
        if (next === null) break;
        at = next;
      } else {
        this.#row.cut(text, codes, at, end, delimiterCode);
        this.#taker.row(this.#row, this.line++, end === text.length);
        at = end + 1;
      }
    }
    return Math.min(at, text.length);
  }

  /** Takes the row at a place whose line holds a quote. Where the next row begins; null: more text is needed. */
  #quotedRow(text: string, at: number, last: boolean): number | null {
    const firstEnd = this.#lineEnd(text, at);
    const first = this.#parseRow(text.slice(at, firstEnd));
    if (first !== 'open') return this.#taken(first, 1, firstEnd, text.length);
    let end = firstEnd;
    let lines = 1;
    for (let closed = false; !closed && end < text.length && lines < QUOTED_LINES_MAX; lines++) {
      const start = end + 1;
      end = this.#lineEnd(text, start);
      closed = isOdd(text, this.#shape.quote, start, end);
    }
    // More text would only be waited for while it may still make a row.
    const isTooLong = end - at > LINE_MAX_CHARS;
    if (end === text.length && !last && !isTooLong) return null;
    const row = isTooLong ? null : this.#parseRow(text.slice(at, end));
    const believed = Array.isArray(row) && (this.#cellsExpected === 0 || row.length === this.#cellsExpected);
    return believed ? this.#taken(row, lines, end, text.length) : this.#taken(null, 1, firstEnd, text.length);
  }

  #taken(cells: string[] | null, lines: number, end: number, textEnd: number): number {
    if (cells === null) this.#taker.unclosedQuote(this.line);
    else {
      this.#row.take(cells);
      this.#taker.row(this.#row, this.line, end === textEnd);
    }
    this.line += lines;
    return end + 1;
  }

  /** The cells of one row; null when its quotes make no sense, `open` when one is never closed. */
  #parseRow(text: string): string[] | null | 'open' {
    const { delimiter, newline, quote } = this.#shape;
    this.#parser ??= new Papa.Parser({ delimiter, newline, quoteChar: quote });
    const { data, errors } = this.#parser.parse(text.replace(/\r$/, ''), 0, false);
    if (errors.some((error) => error.code === 'MissingQuotes')) return 'open';
    return errors.length === 0 && data.length === 1 ? data[0]! : null;
  }

  #lineEnd(text: string, from: number): number {
    const end = text.indexOf(this.#shape.newline, from);
    return end === -1 ? text.length : end;
  }
}

/** Whether a quote stands an odd number of times in a part of a text. */
function isOdd(text: string, quote: string, from: number, to: number): boolean {
  let odd = false;
  for (let at = text.indexOf(quote, from); at !== -1 && at < to; at = text.indexOf(quote, at + 1)) odd = !odd;
  return odd;
}
