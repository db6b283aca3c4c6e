import { usable } from '../issue/issue.ts';
import type { Outcome } from '../issue/issue.ts';
import { kindIssues, stateAltitudeKind } from './altitude-kind.ts';
import { settleAssumed } from './assumed-units.ts';
import { candidateColumns } from './choose-columns.ts';
import { countOf } from './count-of.ts';
import { columnUnits, overHeader, withUnitsRead } from './column-units.ts';
import type { UnitColumn } from './column-units.ts';
import { CsvFixes } from './csv-fixes.ts';
import type { CsvReaders } from './csv-fixes.ts';
import { DELIMITERS, findLayout } from './csv-layout.ts';
import type { CsvLayout } from './csv-layout.ts';
import { lineTooLong, missingColumn, missingHeight, noHeader, unusableRows } from './csv-refusals.ts';
import { finishLog } from './finish-log.ts';
import { FixTable } from './fix-table.ts';
import type { LogReader } from './log-reader.ts';
import type { Log, LogSettings, LogSource } from './log.ts';
import { PositionReader } from './position-reader.ts';
import { positionPlace } from './position-place.ts';
import { RowFaults } from './row-faults.ts';
import { RowSplitter } from './row-splitter.ts';
import { settleColumns } from './settle-columns.ts';
import type { SettledColumns } from './settle-columns.ts';
import { unfitUnit, unusedUnits } from './stated-units.ts';
import { statedStart } from './stated-start.ts';
import type { TextStream } from './text-stream.ts';
import { timeReader } from './time-reader.ts';
import { ValueReader } from './value-reader.ts';

/** Comma-separated values of any maker. */
export const csvReader: LogReader = {
  kind: 'csv',
  recognises: (head) => Object.keys(DELIMITERS).some((delimiter) => head.includes(delimiter)),
  read: readCsv,
};

async function readCsv(text: TextStream, source: LogSource, settings: LogSettings): Promise<Outcome<Log>> {
  const layout = findLayout(text.head, settings);
  if (layout === null) return noHeader(source.name);
  const recognised = settleColumns(candidateColumns(layout, settings));
  const settled = { ...recognised, columns: stateAltitudeKind(recognised.columns, settings) };
  const missing = missingColumn(source.name, layout, settled);
  if (missing !== null) return missing;
  const unfit = unfitUnit(source.name, statedColumns(settled));
  if (unfit !== null) return unfit;
  const desk = setUp(layout, settled, text.expected(countOf(text.head, layout.shape.newline)));
  const splitter = new RowSplitter(layout.shape, desk.fixes, layout.usualCells);
  for await (const block of text.blocks()) {
    splitter.push(block, false);
    if (splitter.tooLong) return lineTooLong(source.name, splitter.line);
  }
  splitter.push('', true);
  return conclude(desk, source, settings);
}

function statedColumns({ columns }: SettledColumns) {
  return columns.flatMap(({ header, role, unit, isUnitStated }) =>
    isUnitStated && unit !== null ? { header, role, unit } : [],
  );
}

/** What one file is read with. */
interface Desk {
  readonly layout: CsvLayout;
  readonly settled: SettledColumns;
  readonly units: readonly UnitColumn[];
  readonly table: FixTable;
  readonly readers: CsvReaders;
  readonly faults: RowFaults;
  readonly fixes: CsvFixes;
}

function setUp(layout: CsvLayout, settled: SettledColumns, expectedRows: number): Desk {
  const { mark, samples } = layout;
  const units = columnUnits(settled.columns, samples, mark);
  const table = new FixTable(['latDeg', 'lonDeg', ...units.map((column) => column.quantity)], expectedRows);
  const readers: CsvReaders = {
    position: new PositionReader(positionPlace(settled.columns, samples, mark)),
    time: timeReader(settled.time!, mark, expectedRows),
    values: units.map(
      ({ column, quantity, unit }) => new ValueReader(column, quantity, unit, mark, table.column(quantity)),
    ),
  };
  const faults = new RowFaults();
  return {
    layout,
    settled,
    units,
    table,
    readers,
    faults,
    fixes: new CsvFixes(layout, readers, table, faults),
  };
}

function conclude(desk: Desk, source: LogSource, settings: LogSettings): Outcome<Log> {
  const { layout, settled, units, readers, faults } = desk;
  const { position } = readers;
  for (const value of readers.values) value.report(faults);
  faults.add('longitude-wrapped', position.wrappedLine, position.wrapped);
  const times = readers.time.resolve(settings, statedStart(layout.preamble, settings));
  const finished = desk.table.finish(times.timeS);
  faults.add('row-without-time', finished.lost.firstLine, finished.lost.count);
  const rows = { seen: desk.fixes.rowsSeen, used: finished.timeS.length };
  const issues = [...faults.issues(), ...times.issues];
  const unusable =
    unusableRows(source.name, settled.columns, rows, position, issues) ??
    missingHeight(source.name, layout.header.line, units, finished, issues);
  if (unusable !== null) return unusable;
  const assumed = settleAssumed(finished, units);
  const said = units.filter(({ column }) => column.confidence === 1).map(({ quantity }) => quantity);
  const { name } = source;
  const about = {
    name,
    kind: 'csv',
    recognised: inWords(layout),
    timeReference: times.reference,
    utcOffsetS: times.utcOffsetS,
    rowsSeen: rows.seen,
  } as const;
  const columns = withUnitsRead(settled.columns, assumed.units);
  const inUnit = columns.flatMap(({ header, unitRead }) => (unitRead === null ? [] : header));
  const log = finishLog({ ...about, sha256: source.sha256() }, finished, assumed.units, columns, [
    ...issues,
    ...assumed.issues,
    ...overHeader(settled.columns),
    ...unusedUnits(settings, new Set(inUnit)),
    ...kindIssues(settings, said, finished.values),
  ]);
  return usable(log);
}

function inWords({ shape, header }: CsvLayout): string {
  const units = header.unitsLine === null ? '' : `, units on line ${header.unitsLine}`;
  return `${DELIMITERS[shape.delimiter]!}-separated, header on line ${header.line}${units}`;
}
