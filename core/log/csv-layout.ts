import type { CsvHeader, HeadRow } from './csv-header.ts';
import { findHeader } from './csv-header.ts';
import { isComment } from './csv-lines.ts';
import type { Row } from './row.ts';
import type { LogSettings } from './log.ts';
import type { DecimalMark } from './parse-number.ts';
import { RowSplitter } from './row-splitter.ts';
import type { CsvShape } from './row-splitter.ts';

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
/** Rows looked at: a header that stands lower is not found. */
const HEAD_ROWS = 1000;
/** Rows that tell what a column holds: a receiver's silent first minutes are then a few of them. */
const SAMPLES_MAX = 100;

/** Finds delimiter, header and decimal mark; null when no delimiter gives a row with a name that is known. */
export function findLayout(head: string, settings: LogSettings): CsvLayout | null {
  const newline = head.includes('\n') ? '\n' : '\r';
  const text = firstLines(head, newline);
  let best: CsvLayout | null = null;
  for (const delimiter of Object.keys(DELIMITERS)) {
    if (!text.includes(delimiter)) continue;
    const shape: CsvShape = { delimiter, newline, quote: quoteOf(text, delimiter) };
    const rows = rowsOf(text, shape);
    const header = findHeader(rows, settings.columns ?? {});
    if (header === null || header.score <= (best?.header.score ?? 0)) continue;
    best = layoutOf(shape, header, rows);
  }
  return best;
}

function layoutOf(shape: CsvShape, header: CsvHeader, rows: readonly HeadRow[]): CsvLayout {
  const samples = thinned(
    rows.filter((row) => row.line >= header.dataLine && row.cells.length > 1 && !isComment(row.cells)),
  ).map((row) => row.cells);
  const preamble = rows.filter((row) => row.line < Math.min(header.line, header.unitsLine ?? header.line));
  return { shape, header, mark: markOf(samples), preamble, samples, usualCells: usualLength(samples) };
}

/** As many as are looked at, evenly spread. */
function thinned(rows: readonly HeadRow[]): readonly HeadRow[] {
  const step = Math.ceil(rows.length / SAMPLES_MAX);
  return rows.filter((_, i) => i % step === 0);
}

/** The first complete lines of the head, no more than a layout needs. */
function firstLines(head: string, newline: string): string {
  let end = 0;
  for (let lines = 0; lines < HEAD_ROWS; lines++) {
    const next = head.indexOf(newline, end);
    if (next === -1) return head;
    end = next + 1;
  }
  return head.slice(0, end);
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
  if (text.includes('"')) return '"';
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
