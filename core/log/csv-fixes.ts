import { cleanName } from './csv-header.ts';
import type { CsvLayout } from './csv-layout.ts';
import type { FixTable } from './fix-table.ts';
import type { PositionReader } from './position-reader.ts';
import type { RowFaults } from './row-faults.ts';
import type { RowTaker } from './row-splitter.ts';
import type { TimeReader } from './time-reader.ts';
import type { ValueReader } from './value-reader.ts';

export interface CsvReaders {
  readonly position: PositionReader;
  readonly time: TimeReader;
  readonly values: readonly ValueReader[];
}

/** Takes the rows of a CSV and puts those with a time and a position into a table. */
export class CsvFixes implements RowTaker {
  /** Rows of data, also those left out. */
  rowsSeen = 0;
  readonly #layout: CsvLayout;
  readonly #readers: CsvReaders;
  readonly #table: FixTable;
  readonly #faults: RowFaults;
  readonly #cellsMin: number;
  readonly #cellsMax: number;

  constructor(layout: CsvLayout, readers: CsvReaders, table: FixTable, faults: RowFaults) {
    this.#layout = layout;
    this.#readers = readers;
    this.#table = table;
    this.#faults = faults;
    const named = layout.header.names.length;
    this.#cellsMin = Math.min(layout.usualCells, named);
    this.#cellsMax = Math.max(layout.usualCells, named);
  }

  row(cells: string[], line: number, unfinished: boolean): void {
    if (line < this.#layout.header.dataLine) return;
    const { position, time, values } = this.#readers;
    const fits =
      cells.length >= this.#cellsMin &&
      (cells.length <= this.#cellsMax || isBlank(cells.slice(this.#cellsMax)));
    if (!fits || !position.read(cells, line) || !time.add(cells)) {
      this.#leaveOut(cells, line, unfinished);
      return;
    }
    this.rowsSeen++;
    this.#table.column('latDeg').push(position.latDeg);
    this.#table.column('lonDeg').push(position.lonDeg);
    for (const value of values) value.read(cells[value.index], line);
    this.#table.endRow(line);
  }

  unclosedQuote(line: number): void {
    if (line < this.#layout.header.dataLine) return;
    this.rowsSeen++;
    this.#faults.add('quote-unclosed', line);
  }

  #leaveOut(cells: readonly string[], line: number, unfinished: boolean): void {
    if (isBlank(cells) || /^[\0\s]*(?:#|\/\/)/.test(cells[0]!)) {
      if (this.#isHeader(cells)) this.#table.breakHere();
      return;
    }
    if (this.#isHeader(cells)) {
      this.#table.breakHere();
      return;
    }
    this.rowsSeen++;
    if (cells.length < this.#cellsMin) this.#faults.add(unfinished ? 'row-cut-short' : 'row-too-short', line);
    else if (cells.length > this.#cellsMax && !isBlank(cells.slice(this.#cellsMax)))
      this.#faults.add('row-too-long', line);
    else if (this.#readers.position.read(cells, line)) this.#faults.add('row-without-time', line);
    else this.#faults.add('row-without-position', line);
  }

  /** Whether a row repeats the header, as recorders do when they are switched on again. */
  #isHeader(cells: readonly string[]): boolean {
    const { names, otherNames, units } = this.#layout.header;
    return [names, otherNames, units].some((row) => {
      const filled = row.filter((name) => name !== '').length;
      return filled > 0 && row.every((name, i) => name === cleanName(cells[i] ?? '', i === 0));
    });
  }
}

function isBlank(cells: readonly string[]): boolean {
  return cells.every((cell) => /^[\0\s]*$/.test(cell));
}
