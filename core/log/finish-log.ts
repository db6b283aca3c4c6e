import type { Issue } from '../issue/issue.ts';
import type { FinishedTable } from './fix-table.ts';
import type { Log, LogColumn, Quantity } from './log.ts';
import { logIssue } from './log-issue.ts';
import { needleScale } from './needle-scale.ts';
import { scaleBy } from './scale-by.ts';
import type { Unit } from './unit-words.ts';

type About = Pick<Log, 'name' | 'sha256' | 'kind' | 'recognised' | 'timeReference' | 'rowsSeen'>;

/** A column that was read, as far as the last steps need it. */
export interface ReadColumn {
  readonly column: { readonly index: number; readonly header: string; readonly unit: Unit | null };
  readonly quantity: Quantity;
}

const NEEDLES = [
  ['localizer', 'localizerRecordedFullScale'],
  ['glidepath', 'glidepathRecordedFullScale'],
] as const;

/** Puts a log together; what can be settled only when all values are known is settled here. */
export function finishLog(
  about: About,
  table: FinishedTable,
  read: readonly ReadColumn[],
  columns: readonly LogColumn[],
  found: readonly Issue[],
): Log {
  const issues = [...found];
  const values: { -readonly [Q in keyof Log['values']]: Log['values'][Q] } = { ...table.values };
  const unused = new Map<number, string>();
  for (const { column, quantity } of read) {
    if (values[quantity] === undefined) unused.set(column.index, 'no row holds a value of it');
  }
  for (const [axis, quantity] of NEEDLES) {
    const from = read.find((column) => column.quantity === quantity)?.column;
    const raw = values[quantity];
    if (from === undefined || raw === undefined) continue;
    const scale = needleScale(axis, from.header, from.unit, raw);
    if (scale.issue !== null) issues.push(scale.issue);
    if (scale.factor === null) {
      delete values[quantity];
      unused.set(from.index, 'the scale of its values is not known');
    } else scaleBy(raw, scale.factor);
  }
  const altitude = read.find((column) => column.quantity === 'altitudeUnnamedFt');
  if (altitude !== undefined && values.altitudeUnnamedFt !== undefined)
    issues.push(kindAssumed(altitude.column.header));
  return {
    ...about,
    columns: columns.map((column) => plainColumn(column, unused.get(column.index))),
    timeS: table.timeS,
    line: table.line,
    values,
    breaks: table.breaks,
    issues,
  };
}

function plainColumn(
  { index, header, unitText, role, confidence, why }: LogColumn,
  unusedBecause: string | undefined,
): LogColumn {
  if (unusedBecause !== undefined)
    return { index, header, unitText, role: null, confidence: 0, why: unusedBecause };
  return { index, header, unitText, role, confidence, why };
}

function kindAssumed(header: string): Issue {
  return logIssue(
    'altitude-kind-assumed',
    `Column "${header}" does not say which altitude it is: taken as height above mean sea level.`,
    {
      tip: 'State its kind: above sea level by GNSS, above the ellipsoid, indicated or pressure altitude.',
    },
  );
}
