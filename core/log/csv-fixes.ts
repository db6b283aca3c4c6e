import { cleanName, namesPosition } from './csv-header.ts';
import { isBlank, isComment } from './csv-lines.ts';
import type { CsvLayout } from './csv-layout.ts';
import type { FixTable } from './fix-table.ts';
import type { NumberColumn } from './number-column.ts';
import type { PositionReader } from './position-reader.ts';
import type { FaultCode, RowFaults } from './row-faults.ts';
import type { RowTaker } from './row-splitter.ts';
import type { Row } from './row.ts';
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
  readonly #latDeg: NumberColumn;
  readonly #lonDeg: NumberColumn;
  readonly #faults: RowFaults;
  readonly #cellsMin: number;
  readonly #cellsMax: number;
  /** Below a header with other columns, until the first one comes again. */
  #isElsewhere = false;

  constructor(layout: CsvLayout, readers: CsvReaders, table: FixTable, faults: RowFaults) {
    this.#layout = layout;
    this.#readers = readers;
    this.#table = table;
    this.#latDeg = table.column('latDeg');
    this.#lonDeg = table.column('lonDeg');
    this.#faults = faults;
    const named = layout.header.names.length;
    this.#cellsMin = Math.min(layout.usualCells, named);
    this.#cellsMax = Math.max(layout.usualCells, named);
  }

  row(row: Row, line: number, unfinished: boolean): void {
    if (line < this.#layout.header.dataLine) return;
    const { position, values } = this.#readers;
    const fault = this.#isElsewhere ? 'row-under-other-header' : this.#faultOf(row, line, unfinished);
    if (fault !== null) {
      this.#leaveOut(row.cells(), line, fault);
      return;
    }
    this.rowsSeen++;
    this.#latDeg.push(position.latDeg);
    this.#lonDeg.push(position.lonDeg);
    for (let i = 0; i < values.length; i++) values[i]!.read(row, line);
    this.#table.endRow(line);
  }

  /** Reads position and time of a row; why it cannot be used, or null when it can. */
  #faultOf(row: Row, line: number, unfinished: boolean): FaultCode | null {
    if (row.length < this.#cellsMin) return unfinished ? 'row-cut-short' : 'row-too-short';
    if (row.length > this.#cellsMax && !isBlank(row.cells().slice(this.#cellsMax))) return 'row-too-long';
    if (!this.#readers.position.read(row, line)) return 'row-without-position';
    return this.#readers.time.add(row) ? null : 'row-without-time';
  }

  unclosedQuote(line: number): void {
    if (line < this.#layout.header.dataLine) return;
    this.rowsSeen++;
    this.#faults.add('quote-unclosed', line);
  }

  #leaveOut(cells: readonly string[], line: number, fault: FaultCode): void {
    if (isBlank(cells)) return;
    if (this.#isHeader(cells)) {
      this.#table.breakHere();
      this.#isElsewhere = false;
    } else if (namesPosition({ cells, line })) this.#isElsewhere = true;
    else if (!isComment(cells)) {
      this.rowsSeen++;
      this.#faults.add(fault, line);
    }
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
