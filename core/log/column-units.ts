import type { Issue } from '../issue/issue.ts';
import type { CsvColumn } from './choose-columns.ts';
import { logIssue } from './log-issue.ts';
import type { LogColumn, Quantity, UnitFrom, UnitRead } from './log.ts';
import { parseNumber } from './parse-number.ts';
import type { DecimalMark } from './parse-number.ts';
import { isQuantity, QUANTITY_RULES, unitFits } from './quantity-rules.ts';
import { unitSuits } from './offered-units.ts';
import { UNITS } from './unit-words.ts';
import type { Unit } from './unit-words.ts';

/** A column that is read for a quantity, and in which unit. */
export interface UnitColumn {
  readonly column: CsvColumn;
  readonly quantity: Quantity;
  readonly unit: Unit;
  /**
   * How the unit is known. `assumed`: nothing in the file's head told it, and a wrong one would spoil the answer; or
   * the unit named does not fit.
   */
  readonly from: UnitFrom;
}

/**
 * Settles the unit of each column that is read, position and time apart: the one that the user states, else the one it names if that fits, else that of
 * its siblings, else the usual one.
 */
export function columnUnits(
  settled: readonly CsvColumn[],
  samples: readonly (readonly string[])[],
  mark: DecimalMark,
): UnitColumn[] {
  const used = settled.flatMap((column) => {
    const quantity = column.role;
    const isValue =
      quantity !== null && isQuantity(quantity) && quantity !== 'latDeg' && quantity !== 'lonDeg';
    return isValue ? [{ column, quantity }] : [];
  });
  const named = used.flatMap(({ column: { unit }, quantity }) =>
    unit !== null && unitFits(unit, quantity) ? unit.name : [],
  );
  return used.map(({ column, quantity }) => {
    const { unit, unitText } = column;
    if (unit !== null && unitFits(unit, quantity))
      return { column, quantity, unit, from: column.isUnitStated ? 'user' : 'header' };
    const { usualUnit, unitMatters } = QUANTITY_RULES[quantity];
    if (quantity === 'altimeterSettingHpa') {
      return { column, quantity, unit: pressureBySize(column, samples, mark), from: 'values' };
    }
    const sibling = siblingUnit(quantity, named);
    const assumed = unitText !== null || (sibling === null && unitMatters);
    const from = assumed ? 'assumed' : sibling === null ? 'usual' : 'others';
    return { column, quantity, unit: unitNamed(sibling ?? usualUnit), from };
  });
}

/** Every column of a file with the unit that it was read in: `read` are those of values. */
export function withUnitsRead(columns: readonly CsvColumn[], read: readonly UnitColumn[]): LogColumn[] {
  const ofValues = new Map(read.map(({ column, unit, from }) => [column.index, unitRead(unit, from)]));
  return columns.map((column) => ({
    ...column,
    unitRead: ofValues.get(column.index) ?? ofPositionOrTime(column),
  }));
}

function unitRead({ name, dimension }: Unit, from: UnitFrom): UnitRead | null {
  return dimension === 'other' ? null : { name, from };
}

/** A time since 1970 tells its unit by its size, row by row; one since the start cannot. */
function ofPositionOrTime({ role, unit, isUnitStated }: CsvColumn): UnitRead | null {
  const isPosition = role === 'latDeg' || role === 'lonDeg';
  if (!isPosition && role !== 'epoch' && role !== 'elapsed') return null;
  if (unit?.dimension === (isPosition ? 'angle' : 'time'))
    return unitRead(unit, isUnitStated ? 'user' : 'header');
  if (isPosition) return { name: 'deg', from: 'usual' };
  return role === 'elapsed' ? { name: 's', from: 'assumed' } : null;
}

/** Says where the user was believed over a header that names another unit of the right kind. */
export function overHeader(columns: readonly CsvColumn[]): Issue[] {
  return columns.flatMap(({ header, role, unit, headerUnit, unitText, isUnitStated }) => {
    const isOver =
      isUnitStated &&
      role !== null &&
      headerUnit !== null &&
      headerUnit !== unit &&
      unitSuits(headerUnit, role);
    const message = `Column "${header}" names the unit "${unitText}": it is read in ${unit?.name}, as the user said.`;
    return isOver ? logIssue('unit-over-header', message) : [];
  });
}

/** The unit that other columns of the file make likely; null when they say nothing. */
export function siblingUnit(quantity: Quantity, named: readonly string[]): string | null {
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

export function unitNamed(name: string): Unit {
  return UNITS.find((unit) => unit.name === name)!;
}
