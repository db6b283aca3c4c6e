import { refused, usable, type Outcome } from '../issue/issue.ts';
import { RowSplitter, type CsvShape } from '../log/row-splitter.ts';
import { listed } from '../units/listed.ts';
import { columnsNamed, runwayColumns, type RunwayColumns } from './runway-columns.ts';

/** How a table of runways is written: what its first line tells. */
export interface RunwayHead {
  readonly shape: CsvShape;
  readonly columns: RunwayColumns;
  /** Line of the header, counted from 1. */
  readonly line: number;
  readonly cells: number;
}

/** The dataset's own comma first; the others are what spreadsheets write. */
const DELIMITERS = [',', ';', '\t'] as const;
/** Fewer of the needed columns named, and it is another kind of file (ours). */
const LEAST_NAMED = 3;
const GET_IT = 'Get runways.csv of the open airports dataset, and hand it over as it is.';

/** Finds the header, which is the first line that is not blank, and the columns in it. */
export function runwayHead(name: string, head: string): Outcome<RunwayHead> {
  const newline = head.includes('\n') ? '\n' : '\r';
  const lines = head.split(newline);
  const at = lines.findIndex((line) => !/^[\0\s]*$/.test(line));
  if (at === -1) return refused('runways-empty', `${name} is empty.`, { tip: GET_IT });
  const found = DELIMITERS.map((delimiter) => {
    const shape: CsvShape = { delimiter, newline, quote: '"' };
    const cells = cellsOf(lines[at]!, shape);
    return { shape, cells, named: columnsNamed(cells) };
  }).reduce((best, one) => (one.named > best.named ? one : best));
  if (found.named < LEAST_NAMED) return noTable(name);
  const recognised = runwayColumns(found.cells);
  if (!('columns' in recognised)) return lacking(name, at + 1, recognised);
  const { shape, cells } = found;
  return usable({ shape, columns: recognised.columns, line: at + 1, cells: cells.length });
}

function cellsOf(line: string, shape: CsvShape): string[] {
  let cells: string[] = [];
  const taker = {
    row: (row: { cells(): string[] }) => {
      cells = row.cells();
    },
    unclosedQuote: () => undefined,
  };
  new RowSplitter(shape, taker, 0).push(line, true);
  return cells;
}

function noTable(name: string): Outcome<never> {
  const message = `${name} is no table of runways: its first line names no columns such as airport_ident, le_ident and le_latitude_deg.`;
  return refused('runways-not-a-table', message, { firstLine: 1, tip: GET_IT });
}

function lacking(
  name: string,
  line: number,
  { missing, twice }: { readonly missing: readonly string[]; readonly twice: readonly string[] },
): Outcome<never> {
  const details = { firstLine: line, tip: GET_IT };
  if (missing.length === 0)
    return refused('runways-column-twice', `${name} names ${listed(twice)} twice.`, details);
  const noun = missing.length === 1 ? 'the column' : 'the columns';
  return refused('runways-column-missing', `${name} lacks ${noun} ${listed(missing)}.`, details);
}
