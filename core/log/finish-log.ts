import type { Issue } from '../issue/issue.ts';
import type { FinishedTable } from './fix-table.ts';
import type { Log, LogColumn, Quantity, UnitFrom, UnitRead } from './log.ts';
import { logIssue } from './log-issue.ts';
import { needleScale } from './needle-scale.ts';
import type { NeedleScale } from './needle-scale.ts';
import { unitFits } from './quantity-rules.ts';
import { scaleBy } from './scale-by.ts';
import type { Unit } from './unit-words.ts';

type About = Pick<
  Log,
  'name' | 'sha256' | 'kind' | 'recognised' | 'timeReference' | 'utcOffsetS' | 'rowsSeen'
>;

/** A column that was read, as far as the last steps need it; its unit is the one that was named for it. */
export interface ReadColumn {
  readonly column: { readonly index: number; readonly header: string; readonly unit: Unit | null };
  readonly quantity: Quantity;
  readonly from: UnitFrom;
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
  const needleUnits = new Map<number, UnitRead>();
  for (const { column, quantity } of read) {
    if (values[quantity] === undefined) unused.set(column.index, 'no row holds a value of it');
  }
  for (const [axis, quantity] of NEEDLES) {
    const needle = read.find((column) => column.quantity === quantity);
    const raw = values[quantity];
    if (needle === undefined || raw === undefined) continue;
    const { index, header, unit } = needle.column;
    const named = unit !== null && unitFits(unit, quantity) ? unit : null;
    const scale = needleScale(axis, header, named, raw);
    if (scale.issue !== null) issues.push(scale.issue);
    if (scale.factor === null) {
      delete values[quantity];
      unused.set(index, 'the scale of its values is not known');
      continue;
    }
    scaleBy(raw, scale.factor);
    needleUnits.set(index, needleUnit(named, scale, needle.from));
  }
  const altitude = read.find((column) => column.quantity === 'altitudeUnnamedFt');
  if (altitude !== undefined && values.altitudeUnnamedFt !== undefined)
    issues.push(kindAssumed(altitude.column.header));
  return {
    ...about,
    columns: columns.map((column) =>
      plainColumn(column, unused.get(column.index), needleUnits.get(column.index)),
    ),
    timeS: table.timeS,
    line: table.line,
    values,
    breaks: table.breaks,
    issues,
  };
}

/** The unit of a needle, which the values may have had to show. */
function needleUnit(named: Unit | null, { factor, issue }: NeedleScale, from: UnitFrom): UnitRead {
  if (named !== null && named.name !== 'dots') return { name: named.name, from };
  const shown = factor === 1 ? 'full scale' : factor === 1 / 5 ? 'dots of 5' : 'dots of 2';
  return { name: shown, from: issue === null ? 'values' : 'assumed' };
}

function plainColumn(
  { index, header, unitText, unitRead, role, confidence, why }: LogColumn,
  unusedBecause: string | undefined,
  needleUnit: UnitRead | undefined,
): LogColumn {
  if (unusedBecause !== undefined)
    return { index, header, unitText, unitRead: null, role: null, confidence: 0, why: unusedBecause };
  return { index, header, unitText, unitRead: needleUnit ?? unitRead, role, confidence, why };
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
