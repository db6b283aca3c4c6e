import type { CsvHeader, HeadRow } from './csv-header.ts';
import { findHeader } from './csv-header.ts';
import { isComment } from './csv-lines.ts';
import type { LogSettings } from './log.ts';
import type { DecimalMark } from './parse-number.ts';
import { RowSplitter } from './row-splitter.ts';
import type { CsvShape } from './row-splitter.ts';
import type { Row } from './row.ts';

/** Everything about a CSV that its head tells. */
export interface CsvLayout {
  readonly shape: CsvShape;
  readonly header: CsvHeader;
  readonly mark: DecimalMark;
  /** Rows before the header. */
  readonly preamble: readonly HeadRow[];
  /** Some of the first rows after the header, from all over them. */
  readonly samples: readonly (readonly string[])[];
  /** Cells that most rows have. */
  readonly usualCells: number;
}

/** Delimiters by name, the likelier first. */
export const DELIMITERS: Readonly<Record<string, string>> = {
  ',': 'comma',
  ';': 'semicolon',
  '\t': 'tab',
  '|': 'bar',
};
/** Lines looked at first: nearly every header stands among them. */
const TOP_LINES = 50;
/** Lines looked at: a header that stands lower is not found. */
const HEAD_LINES = 1000;
/** Rows that tell what a column holds: a receiver's silent first minutes are then a few of them. */
const SAMPLES_MAX = 100;

/** Finds delimiter, header and decimal mark; null when no delimiter gives a row with a name that is known. */
export function findLayout(head: string, settings: LogSettings): CsvLayout | null {
  const newline = newlineOf(head);
  const text = firstLines(head, newline, HEAD_LINES);
  const onTop = findNames(firstLines(text, newline, TOP_LINES), text, settings);
  const found = onTop?.header.namesPosition ? onTop : findNames(text, text, settings);
  return found === null ? null : layoutOf(found, text);
}

function newlineOf(head: string): CsvShape['newline'] {
  return head.includes('\n') ? '\n' : '\r';
}

/** A header, and how the rows around it are cut. */
interface Names {
  readonly shape: CsvShape;
  readonly header: CsvHeader;
  readonly rows: readonly HeadRow[];
}

/** Looks for the header among some lines of a head, of which all tells what a quote is. */
function findNames(lines: string, head: string, settings: LogSettings): Names | null {
  const newline = newlineOf(head);
  let best: Names | null = null;
  for (const delimiter of Object.keys(DELIMITERS)) {
    if (!lines.includes(delimiter)) continue;
    const shape: CsvShape = { delimiter, newline, quote: quoteOf(head, delimiter) };
    const rows = rowsOf(lines, shape);
    const header = findHeader(rows, settings.columns ?? {});
    if (header !== null && header.score > (best?.header.score ?? 0)) best = { shape, header, rows };
  }
  return best;
}

function layoutOf({ shape, header, rows }: Names, text: string): CsvLayout {
  const lines = text.split(shape.newline).slice(header.dataLine - 1);
  const samples = thinned(lines)
    .flatMap((line) => rowsOf(line, shape))
    .map((row) => row.cells)
    .filter((cells) => cells.length > 1 && !isComment(cells));
  const preamble = rows.filter((row) => row.line < Math.min(header.line, header.unitsLine ?? header.line));
  return { shape, header, mark: markOf(samples), preamble, samples, usualCells: usualLength(samples) };
}

/** As many as are looked at, evenly spread. */
function thinned(lines: readonly string[]): readonly string[] {
  const step = Math.ceil(lines.length / SAMPLES_MAX);
  return lines.filter((_, i) => i % step === 0);
}

/** So many complete lines of a text, or all of it. */
function firstLines(text: string, newline: string, count: number): string {
  let end = 0;
  for (let lines = 0; lines < count; lines++) {
    const next = text.indexOf(newline, end);
    if (next === -1) return text;
    end = next + 1;
  }
  return text.slice(0, end);
}

function rowsOf(text: string, shape: CsvShape): HeadRow[] {
  const rows: HeadRow[] = [];
  const taker = {
    row: (row: Row, line: number) => void rows.push({ cells: row.cells(), line }),
    unclosedQuote: () => undefined,
  };
  const splitter = new RowSplitter(shape, taker, 0);
  splitter.push(text, true);
  return rows;
}

/** Single quotes are quotes only when whole cells stand in them and no double quote is there. */
function quoteOf(text: string, delimiter: string): string {
  if (text.includes('"') || !text.includes("'")) return '"';
  const cells = text
    .slice(0, 10_000)
    .split(/[\r\n]+/)
    .flatMap((line) => line.split(delimiter));
  return cells.filter((cell) => /^'[^']*'$/.test(cell)).length > 3 ? "'" : '"';
}

/** The decimal mark of most cells that can be but a number. */
function markOf(samples: readonly (readonly string[])[]): DecimalMark {
  let commas = 0;
  let points = 0;
  for (const cells of samples) {
    for (const cell of cells) {
      if (/^\s*[+-]?\d*,\d+\s*$/.test(cell)) commas++;
      if (/^\s*[+-]?\d*\.\d+\s*$/.test(cell)) points++;
    }
  }
  return commas > points ? ',' : '.';
}

function usualLength(samples: readonly (readonly string[])[]): number {
  const counts = new Map<number, number>();
  for (const { length } of samples) counts.set(length, (counts.get(length) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 0;
}
