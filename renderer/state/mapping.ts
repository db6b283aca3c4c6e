import type { ColumnRole, LogColumn, LogSettings } from '../../core/log/log.ts';
import { unitsOffered } from '../../core/log/offered-units.ts';
import { saidOf } from '../../core/log/said-of.ts';
import { headerKey } from '../../core/log/header-key.ts';
import type { Inspection } from '../../core/report/inspection.ts';
import type { Notes } from '../../electron/bridge/calls.ts';
import type { Done } from './analyst.ts';

/** What the user says of a log's columns, by header text: what they are taken for, and what they are in. */
export type Mapping = Pick<LogSettings, 'columns' | 'units'>;

/** What a column is taken for: as the user said last, also while the log is still being read anew. */
export function roleNow({ columns }: Mapping, { header, role }: LogColumn): ColumnRole | null {
  const said = saidOf(columns, header);
  return said === undefined ? role : said;
}

/** The unit that the user says a column is in; null when that is left to the log. */
export function unitNow({ units }: Mapping, { header }: LogColumn): string | null {
  return saidOf(units, header) ?? null;
}

/** All columns as they are, but one that is taken for something else; a unit which that cannot have goes. */
export function withRole(
  columns: readonly LogColumn[],
  said: Mapping,
  { header }: LogColumn,
  role: ColumnRole | null,
): Mapping {
  const roles = columns.map((column) => [column.header, roleNow(said, column)] as const);
  const suits = ([name, unit]: [string, string]) =>
    name !== header || (role !== null && unitsOffered(role).includes(unit));
  return {
    columns: { ...Object.fromEntries(roles), [header]: role },
    ...(said.units && { units: Object.fromEntries(Object.entries(said.units).filter(suits)) }),
  };
}

/** The same columns, one of them in another unit; null leaves it to the log. */
export function withUnit(said: Mapping, { header }: LogColumn, unit: string | null): Mapping {
  const others = Object.entries(said.units ?? {}).filter(([name]) => name !== header);
  return {
    ...(said.columns && { columns: said.columns }),
    units: Object.fromEntries(unit === null ? others : [...others, [header, unit]]),
  };
}

/** By what a log's headers are remembered, also where it could not be read for want of one; null where none are known. */
export function headerKeyOf(done: Done<Inspection>): string | null {
  if (done.kind === 'done') return done.value.headerKey;
  if (done.kind !== 'refused' || done.issue.columns === undefined) return null;
  return headerKey(done.issue.columns.map((header) => ({ header })));
}

/** What was said of the columns of logs with these headers; null when nothing was. */
export function remembered({ mappings, units = {} }: Notes, key: string | null): Mapping | null {
  if (key === null) return null;
  const columns = mappings[key] as Mapping['columns'];
  const ofColumns = units[key];
  if (!columns && !ofColumns) return null;
  return { ...(columns && { columns }), ...(ofColumns && { units: ofColumns }) };
}

/** The notes with what is said now of logs with these headers. */
export function withRemembered(notes: Notes, headerKey: string, { columns, units = {} }: Mapping): Notes {
  const { units: before = {}, ...rest } = notes;
  const { [headerKey]: _, ...others } = before;
  const all = Object.keys(units).length > 0 ? { ...others, [headerKey]: units } : others;
  return {
    ...rest,
    mappings: columns ? { ...notes.mappings, [headerKey]: columns } : notes.mappings,
    ...(Object.keys(all).length > 0 && { units: all }),
  };
}
