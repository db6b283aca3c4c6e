import type { LoggedFix } from './logged-fix.ts';

export interface CsvColumn {
  readonly header: string;
  readonly unit?: string;
  readonly cell: (fix: LoggedFix) => string;
}

/** How one kind of recorder writes its files. */
export interface CsvLayout {
  readonly columns: readonly CsvColumn[];
  readonly delimiter: ',' | ';' | '\t';
  /** Lines before the header, such as comments. */
  readonly preamble?: readonly string[];
  /** A row of units of its own under the names. */
  readonly unitsRow?: boolean;
  readonly lineEnd?: '\n' | '\r\n';
  readonly byteOrderMark?: boolean;
  /** Pads every cell with blanks to this many characters. */
  readonly padTo?: number;
}

/** Writes fixes as text in a layout. */
export function csvText(layout: CsvLayout, fixes: readonly LoggedFix[]): string {
  const { columns, delimiter } = layout;
  const line = (cells: readonly string[]): string =>
    cells.map((cell) => cell.padStart(layout.padTo ?? 0)).join(delimiter);
  const lines = [
    ...(layout.preamble ?? []),
    line(columns.map((column) => column.header)),
    ...(layout.unitsRow ? [line(columns.map((column) => column.unit ?? ''))] : []),
    ...fixes.map((fix) => line(columns.map((column) => column.cell(fix)))),
  ];
  const lineEnd = layout.lineEnd ?? '\n';
  return `${layout.byteOrderMark ? '\uFEFF' : ''}${lines.join(lineEnd)}${lineEnd}`;
}

/** A number with so many decimals and never a minus before a zero. */
export function decimal(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 && text.startsWith('-') ? text.slice(1) : text;
}
