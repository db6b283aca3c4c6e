import type { Issue, Outcome } from '../issue/issue.ts';
import type { UnitColumn } from './column-units.ts';
import type { CsvLayout } from './csv-layout.ts';
import type { LogRefusalCode } from './issue-codes.ts';
import { logRefused } from './log-issue.ts';
import type { LogColumn } from './log.ts';
import type { FinishedTable } from './fix-table.ts';
import type { PositionReader } from './position-reader.ts';
import { isHeight } from './quantity-rules.ts';
import { LINE_MAX_CHARS } from './row-splitter.ts';
import type { SettledColumns } from './settle-columns.ts';

type Refusal = Outcome<never>;
type Named = Pick<LogColumn, 'header' | 'role'>;

const NAMES_SHOWN = 12;
const MAP_BY_HAND = 'If a column holds it under another name, say which one.';

/** Text with delimiters, but no line of it names a column that is known. */
export function noHeader(name: string): Refusal {
  return logRefused(
    'not-a-track-log',
    `${name} is no track log: no line of it names columns such as latitude, longitude, time and altitude.`,
    {
      tip: 'Export the flight as CSV with a header line, or as GPX.',
    },
  );
}

/** The one column that a log cannot do without and this one lacks; null when it has all. */
export function missingColumn(
  name: string,
  layout: CsvLayout,
  { columns, time }: SettledColumns,
): Refusal | null {
  const { line, names } = layout.header;
  const at = `${name}, line ${line}`;
  if (layout.samples.length === 0) {
    return logRefused('no-rows', `${name} has a header on line ${line} but no rows of data under it.`, {
      firstLine: line,
    });
  }
  const found = names.filter((header) => header !== '');
  const list =
    found.slice(0, NAMES_SHOWN).join(', ') +
    (found.length > NAMES_SHOWN ? ` and ${found.length - NAMES_SHOWN} more` : '');
  const roles = new Set<string | null>(columns.map((column) => column.role));
  const refuse = (code: LogRefusalCode, what: string): Refusal =>
    logRefused(code, `${at}: no column holds ${what}; the columns are ${list}.`, {
      firstLine: line,
      tip: MAP_BY_HAND,
      columns: columns.map(({ header }) => header),
    });
  if (!roles.has('latDeg') || !roles.has('lonDeg'))
    return refuse('no-position', 'the position (latitude and longitude)');
  if (time === null) return refuse('no-time', 'the time');
  if (![...roles].some((role) => role !== null && isHeight(role)))
    return refuse('no-altitude', 'an altitude');
  return null;
}

/** Why the rows cannot be used; null when they can. */
export function unusableRows(
  name: string,
  columns: readonly Named[],
  rows: { readonly seen: number; readonly used: number },
  position: PositionReader,
  issues: readonly Issue[],
): Refusal | null {
  if (position.swapped * 2 > rows.seen) return swapped(name, columns, position);
  if (rows.used > 0) return null;
  const main = issues.toSorted((a, b) => b.count - a.count)[0];
  if (main === undefined) return logRefused('no-rows', `${name} has a header but no rows of data under it.`);
  const message = `${name}: none of the ${rows.seen} rows can be used. ${main.message}`;
  return logRefused('no-usable-rows', message, { firstLine: main.firstLine, tip: main.tip }, issues);
}

/** Columns are named as heights, but no row holds one; null when one does. */
export function missingHeight(
  name: string,
  line: number,
  read: readonly UnitColumn[],
  { values }: FinishedTable,
  issues: readonly Issue[],
): Refusal | null {
  if (Object.keys(values).some((quantity) => isHeight(quantity))) return null;
  const headers = read
    .filter(({ quantity }) => isHeight(quantity))
    .map(({ column }) => `"${column.header}"`)
    .join(' or ');
  const message = `${name}, line ${line}: no row holds a usable altitude in column ${headers}.`;
  return logRefused('no-altitude', message, { firstLine: line, tip: MAP_BY_HAND }, issues);
}

function swapped(name: string, columns: readonly Named[], position: PositionReader): Refusal {
  const header = (role: string): string => columns.find((column) => column.role === role)!.header;
  const { swappedLine, swapped } = position;
  return logRefused(
    'position-swapped',
    `${name}, line ${swappedLine}: latitude and longitude look swapped: "${header('latDeg')}" goes beyond 90 and "${header('lonDeg')}" does not.`,
    { count: swapped, firstLine: swappedLine, tip: 'Map the two columns the other way round.' },
  );
}

export function lineTooLong(name: string, line: number): Refusal {
  return logRefused(
    'line-too-long',
    `${name}, line ${line} is longer than ${LINE_MAX_CHARS} characters: no track log has such lines.`,
    {
      firstLine: line,
      tip: 'Export the flight as CSV or GPX again.',
    },
  );
}
