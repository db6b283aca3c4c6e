import type { ColumnRole } from './log.ts';
import { isQuantity, QUANTITY_RULES, unitFits } from './quantity-rules.ts';
import type { Dimension, Unit } from './unit-words.ts';

/** Units to choose from, the trade's first; what else is of the dimension can be stated too, such as km of a height. */
const OFFERED: Readonly<Partial<Record<Dimension, readonly string[]>>> = {
  length: ['ft', 'm'],
  speed: ['kt', 'km/h', 'mph', 'm/s'],
  angle: ['deg', 'rad'],
  pressure: ['hPa', 'inHg', 'Pa'],
  temperature: ['°C', '°F', 'K'],
  needle: ['full scale', '%', 'dots of 2', 'dots of 5', 'DDM', 'µA'],
  time: ['s', 'ms', 'µs', 'ns'],
};
const POSITION = ['deg', '1e-7 deg', 'semicircles', 'rad'];
const ACCURACY = ['m', 'ft', 'cm', 'mm'];
const OFFERED_OF: Readonly<Partial<Record<ColumnRole, readonly string[]>>> = {
  latDeg: POSITION,
  lonDeg: POSITION,
  verticalSpeedFpm: ['ft/min', 'm/s', 'ft/s'],
  horizontalAccuracyM: ACCURACY,
  verticalAccuracyM: ACCURACY,
  horizontalProtectionM: ACCURACY,
  verticalProtectionM: ACCURACY,
};

/** Names of the units that a column of a role is likely to be in; none where there is nothing to choose. */
export function unitsOffered(role: ColumnRole): readonly string[] {
  const dimension = dimensionOf(role);
  return OFFERED_OF[role] ?? (dimension === null ? [] : (OFFERED[dimension] ?? []));
}

/** Whether a column of a role can be stated to be in a unit. */
export function unitSuits(unit: Unit, role: ColumnRole): boolean {
  const dimension = dimensionOf(role);
  if (dimension === null || dimension === 'other') return false;
  return isQuantity(role) ? unitFits(unit, role) : unit.dimension === dimension;
}

function dimensionOf(role: ColumnRole): Dimension | null {
  if (isQuantity(role)) return QUANTITY_RULES[role].dimension;
  return role === 'epoch' || role === 'elapsed' ? 'time' : null;
}
