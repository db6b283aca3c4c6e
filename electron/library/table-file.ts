import { issue, type Issue } from '../../core/issue/issue.ts';
import { isBlank, isComment } from '../../core/log/csv-lines.ts';
import { DELIMITERS } from '../../core/log/csv-layout.ts';
import { RowSplitter, type CsvShape } from '../../core/log/row-splitter.ts';
import type { Row } from '../../core/log/row.ts';
import { headerWord } from '../bridge/names.ts';

/** Columns by name, with the words that a header may have for each, as `headerWord` leaves them. */
export type ColumnWords<Column extends string> = Readonly<Record<Column, readonly string[]>>;

export interface TableLine<Column extends string> {
  /** Counted from 1. */
  readonly line: number;
  /** What stands in the column, without padding; '' where nothing does, or where there is no such column. */
  text(column: Column): string;
}

/** A table that people keep, as CSV: the lines below its header, and what could not be used of them. */
export interface TableFile<Column extends string> {
  readonly columns: ReadonlySet<Column>;
  readonly lines: readonly TableLine<Column>[];
  readonly issues: readonly Issue[];
}

interface Line {
  readonly line: number;
  /** Null: a quote in it is never closed. */
  readonly cells: readonly string[] | null;
}

interface Header<Column extends string> {
  readonly at: number;
  readonly width: number;
  readonly places: ReadonlyMap<Column, number>;
}

/** A title or two may stand before the header. */
const HEADER_WITHIN_LINES = 20;

/** Reads a table by the words in its header; null where no line has the columns that are needed. */
export function readTable<Column extends string>(
  text: string,
  words: ColumnWords<Column>,
  isEnough: (columns: ReadonlySet<Column>) => boolean,
): TableFile<Column> | null {
  const read = text.replace(/^\uFEFF/, '');
  let best: { header: Header<Column>; lines: Line[] } | null = null;
  // Where there is but one column nothing parts it: a comma may then stand in a name.
  for (const delimiter of [...Object.keys(DELIMITERS), '\0']) {
    const lines = linesOf(read, delimiter);
    const header = headerIn(lines, words, isEnough);
    if (header && header.places.size > (best?.header.places.size ?? 0)) best = { header, lines };
    if (header && delimiter === '\0' && best!.header.width === 1) best = { header, lines };
  }
  return best && tableBelow(best.header, best.lines);
}

function linesOf(text: string, delimiter: string): Line[] {
  const shape: CsvShape = { delimiter, quote: '"', newline: text.includes('\n') ? '\n' : '\r' };
  const lines: Line[] = [];
  const taker = {
    row: (row: Row, line: number) => void lines.push({ line, cells: row.cells().map((cell) => cell.trim()) }),
    unclosedQuote: (line: number) => void lines.push({ line, cells: null }),
  };
  const splitter = new RowSplitter(shape, taker, 0);
  splitter.push(text, true);
  return lines.filter(({ cells }) => cells === null || !(isBlank(cells) || isComment(cells)));
}

function headerIn<Column extends string>(
  lines: readonly Line[],
  words: ColumnWords<Column>,
  isEnough: (columns: ReadonlySet<Column>) => boolean,
): Header<Column> | null {
  for (const [at, { cells }] of lines.slice(0, HEADER_WITHIN_LINES).entries()) {
    const names = cells?.map(headerWord) ?? [];
    const places = new Map<Column, number>();
    for (const column of Object.keys(words) as Column[]) {
      const place = names.findIndex((name) => words[column].includes(name));
      if (place !== -1) places.set(column, place);
    }
    if (isEnough(new Set(places.keys()))) return { at, width: names.length, places };
  }
  return null;
}

function tableBelow<Column extends string>(
  { at, width, places }: Header<Column>,
  lines: readonly Line[],
): TableFile<Column> {
  const issues: Issue[] = [];
  const used: TableLine<Column>[] = [];
  for (const { line, cells } of lines.slice(at + 1)) {
    if (cells === null) issues.push(leftOut(line, `a quote on line ${line} is never closed`));
    else if (cells.slice(width).some((cell) => cell !== ''))
      issues.push(leftOut(line, `line ${line} has ${cells.length} cells where the header has ${width}`));
    else used.push({ line, text: (column) => cells[places.get(column) ?? -1] ?? '' });
  }
  return { columns: new Set(places.keys()), lines: used, issues };
}

/** A line that cannot be used costs itself and no other. */
export function leftOut(line: number, why: string, tip: string | null = null): Issue {
  return issue('warning', 'line-left-out', `Left out: ${why}.`, { firstLine: line, tip });
}
