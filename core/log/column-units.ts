import { issue } from '../issue/issue.ts';
import type { Issue } from '../issue/issue.ts';
import type { CsvColumn } from './choose-columns.ts';
import type { Quantity } from './log.ts';
import { parseNumber } from './parse-number.ts';
import type { DecimalMark } from './parse-number.ts';
import { QUANTITY_RULES } from './quantity-rules.ts';
import { isQuantity } from './recognise-column.ts';
import { UNITS } from './unit-words.ts';
import type { Unit } from './unit-words.ts';

/** A column that is read for a quantity, and in which unit. */
interface UnitColumn {
  readonly column: CsvColumn;
  readonly quantity: Quantity;
  readonly unit: Unit;
}

export interface ColumnUnits {
  readonly columns: readonly UnitColumn[];
  readonly issues: readonly Issue[];
}

/** Settles the unit of each column that is read, position and time apart: the one it names, else its siblings' system, else the usual one, which is said. */
export function columnUnits(
  settled: readonly CsvColumn[],
  samples: readonly (readonly string[])[],
  mark: DecimalMark,
): ColumnUnits {
  const used = settled.flatMap((column) => {
    const quantity = column.role;
    const isValue =
      quantity !== null && isQuantity(quantity) && quantity !== 'latDeg' && quantity !== 'lonDeg';
    return isValue ? [{ column, quantity }] : [];
  });
  const named = used.map(({ column }) => column.unit?.name).filter((name) => name !== undefined);
  const issues: Issue[] = [];
  const columns = used.map(({ column, quantity }) => {
    if (column.unit !== null) return { column, quantity, unit: column.unit };
    if (quantity === 'altimeterSettingHpa')
      return { column, quantity, unit: pressureBySize(column, samples, mark) };
    const sibling = siblingUnit(quantity, named);
    if (sibling === null && QUANTITY_RULES[quantity].unitMatters) issues.push(unitAssumed(column, quantity));
    return { column, quantity, unit: unitNamed(sibling ?? QUANTITY_RULES[quantity].usualUnit) };
  });
  return { columns, issues };
}

/** The unit that other columns of the file make likely; null when they say nothing. */
function siblingUnit(quantity: Quantity, named: readonly string[]): string | null {
  const metric = ['m', 'km/h', 'm/s'].some((name) => named.includes(name));
  const imperial = ['ft', 'kt', 'ft/min'].some((name) => named.includes(name));
  const { dimension, unitMatters } = QUANTITY_RULES[quantity];
  if (!unitMatters || metric === imperial) return null;
  if (dimension === 'length') return metric ? 'm' : 'ft';
  if (quantity === 'verticalSpeedFpm') return metric ? 'm/s' : 'ft/min';
  if (imperial) return 'kt';
  return named.find((name) => name === 'km/h' || name === 'm/s') ?? null;
}

/** An altimeter setting tells its unit by its size: 29.92 inHg, 1013 hPa, 101300 Pa. */
function pressureBySize(column: CsvColumn, samples: readonly (readonly string[])[], mark: DecimalMark): Unit {
  const values = samples.map((cells) => parseNumber(cells[column.index] ?? '', mark));
  const first = values.find((value) => value > 0) ?? 0;
  return unitNamed(first < 40 ? 'inHg' : first < 2000 ? 'hPa' : 'Pa');
}

function unitAssumed(column: CsvColumn, quantity: Quantity): Issue {
  const { label, usualUnit } = QUANTITY_RULES[quantity];
  return issue(
    'caution',
    'unit-assumed',
    `Column "${column.header}" (${label}) names no unit: taken as ${usualUnit}.`,
    {
      tip: `Name the unit in the header, such as "${column.header} (${usualUnit})", or set it for this column.`,
    },
  );
}

function unitNamed(name: string): Unit {
  return UNITS.find((unit) => unit.name === name)!;
}
