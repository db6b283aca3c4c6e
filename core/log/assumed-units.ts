import type { Issue } from '../issue/issue.ts';
import { wrap180 } from '../units/units.ts';
import { siblingUnit, unitNamed } from './column-units.ts';
import type { UnitColumn } from './column-units.ts';
import type { FinishedTable } from './fix-table.ts';
import { logIssue } from './log-issue.ts';
import { QUANTITY_RULES } from './quantity-rules.ts';
import { scaleBy } from './scale-by.ts';

/** What a groundspeed that was taken as knots comes to, over the speed by the positions, when it is in each unit. */
const RATIOS: readonly (readonly [unit: string, ratio: number])[] = [
  ['kt', 1],
  ['mph', 1852 / 1609.344],
  ['km/h', 1.852],
  ['m/s', 1852 / 3600],
];
/** Half of the way from knots to miles an hour, and more than positions are out over a flight (our own choice). */
const RATIO_SLACK = 0.06;
/** Farther apart than this, two fixes may have a turn between them. */
const STEP_MAX_S = 10;
/** This much way is needed to measure a speed by. */
const WAY_MIN_NM = 2;
/** A minute of latitude is a nautical mile to within 0.6 %, near enough to tell units apart. */
const NM_PER_DEGREE = 60;

/**
 * Settles the units that nothing named, once all values are known: the groundspeed's by the way between the
 * positions, the others' by the groundspeed's. The values are brought to them where they stand, and what the units
 * were taken for is said.
 */
export function settleAssumed(
  { timeS, values }: FinishedTable,
  read: readonly UnitColumn[],
): { readonly units: readonly UnitColumn[]; readonly issues: readonly Issue[] } {
  const isOpen = ({ from, quantity }: UnitColumn) => from === 'assumed' && values[quantity] !== undefined;
  const speed = read.find((column) => column.quantity === 'groundspeedKt' && isOpen(column));
  const shown = speed === undefined ? null : unitByWay(timeS, values);
  const issues: Issue[] = [];
  const units = read.map((column) => {
    if (!isOpen(column)) return column;
    const { quantity } = column;
    const isShown = column === speed && shown !== null;
    const name = isShown ? shown : ((shown && siblingUnit(quantity, [shown])) ?? column.unit.name);
    const unit = unitNamed(name);
    const factor = unit.factor / column.unit.factor;
    if (factor !== 1) scaleBy(values[quantity]!, factor);
    issues.push(isShown ? shownBy(column, name) : stillAssumed(column, name));
    return isShown ? { ...column, unit, from: 'positions' as const } : { ...column, unit };
  });
  return { units, issues };
}

/** The unit of a groundspeed taken as knots, by the distance between the positions; null when it fits none. */
function unitByWay(
  timeS: Float64Array,
  { latDeg, lonDeg, groundspeedKt }: FinishedTable['values'],
): string | null {
  let wayNm = 0;
  let recordedNm = 0;
  for (let row = 1; row < timeS.length; row++) {
    const seconds = timeS[row]! - timeS[row - 1]!;
    const speedKt = (groundspeedKt![row]! + groundspeedKt![row - 1]!) / 2;
    if (!(seconds > 0 && seconds <= STEP_MAX_S) || Number.isNaN(speedKt)) continue;
    const north = latDeg[row]! - latDeg[row - 1]!;
    const east = wrap180(lonDeg[row]! - lonDeg[row - 1]!) * Math.cos((latDeg[row]! * Math.PI) / 180);
    wayNm += Math.hypot(north, east) * NM_PER_DEGREE;
    recordedNm += (speedKt * seconds) / 3600;
  }
  if (wayNm < WAY_MIN_NM) return null;
  const ratio = recordedNm / wayNm;
  return RATIOS.find(([, expected]) => Math.abs(ratio / expected - 1) <= RATIO_SLACK)?.[0] ?? null;
}

function shownBy(column: UnitColumn, unit: string): Issue {
  const message = `${withoutUnit(column)}: the positions show that it is ${unit}.`;
  return logIssue('unit-from-positions', message);
}

function stillAssumed(column: UnitColumn, unit: string): Issue {
  const { header, unitText } = column.column;
  const tip =
    unitText === null
      ? `Name the unit in the header, such as "${header} (${unit})", or set it for this column.`
      : 'Set a unit of the right kind for this column.';
  return logIssue('unit-assumed', `${withoutUnit(column)}: taken as ${unit}.`, { tip });
}

function withoutUnit({ column, quantity }: UnitColumn): string {
  const { label } = QUANTITY_RULES[quantity];
  const { header, unitText } = column;
  const named = unitText === null ? 'names no unit' : `names a unit that does not fit ("${unitText}")`;
  return `Column "${header}" (${label}) ${named}`;
}
