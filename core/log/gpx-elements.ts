import { QUANTITY_OF_KIND } from './altitude-kind.ts';
import { GPX_WORDS } from './gpx-words.ts';
import { unitNamed } from './column-units.ts';
import { wordsOf } from './header-tokens.ts';
import type { ColumnRole, Log, LogColumn, LogSettings, Quantity } from './log.ts';
import { QUANTITY_RULES, unitFits } from './quantity-rules.ts';
import { isQuantity } from './recognise-column.ts';
import { unitOf } from './unit-words.ts';
import type { Unit } from './unit-words.ts';

/** What is read from track points for one quantity. */
export interface GpxElement {
  readonly quantity: Quantity;
  /** Local names in lower case that hold it; the first one a point has counts. */
  readonly names: readonly string[];
  /** The same for a person. */
  readonly header: string;
  readonly unit: Unit;
  readonly saidByUser: boolean;
}

/**
 * The elements to look for. A name that the user speaks of takes the place of the usual names of its quantity, and
 * may be one that nothing here knows.
 */
export function gpxElements(settings: LogSettings): GpxElement[] {
  const roles = rolesOf(settings);
  const units = byName(settings.units);
  const spokenOf = new Set<Quantity>();
  const byQuantity = new Map<Quantity, GpxElement>();
  for (const name of new Set([...GPX_WORDS.keys(), ...roles.keys()])) {
    const [usualRole, usualUnit] = GPX_WORDS.get(name) ?? [null, null];
    const saidByUser = roles.has(name);
    const quantity = saidByUser ? roles.get(name)! : usualRole;
    if (quantity === null || !isQuantity(quantity) || isPosition(quantity) || spokenOf.has(quantity))
      continue;
    const isSpokenOf = saidByUser || units.has(name);
    if (isSpokenOf) spokenOf.add(quantity);
    const names = isSpokenOf ? [name] : [...(byQuantity.get(quantity)?.names ?? []), name];
    const unit = unitFor(quantity, units.get(name), usualUnit);
    byQuantity.set(quantity, { quantity, names, header: names.join(' or '), unit, saidByUser });
  }
  return [...byQuantity.values()];
}

/** The height of GPX is of an open kind: a stated kind is its, unless the user says more by name. */
function rolesOf({ columns, altitudeKind }: LogSettings): Map<string, ColumnRole | null> {
  const roles = byName(columns);
  if (altitudeKind === undefined || roles.has('ele')) return roles;
  const stated = QUANTITY_OF_KIND[altitudeKind];
  return [...roles.values()].includes(stated) ? roles : roles.set('ele', stated);
}

function byName<T>(settings: Readonly<Record<string, T>> | undefined): Map<string, T> {
  return new Map(Object.entries(settings ?? {}).map(([header, value]) => [header.toLowerCase(), value]));
}

function isPosition(quantity: Quantity): boolean {
  return quantity === 'latDeg' || quantity === 'lonDeg';
}

/** The first unit that fits: the user's, the element's, the metric one that GPX keeps to, else the trade's. */
function unitFor(quantity: Quantity, said: string | undefined, usual: string | null): Unit {
  const named = [usual, 'm', 'm/s', QUANTITY_RULES[quantity].usualUnit].flatMap((name) => name ?? []);
  const units = [unitOf(wordsOf(said ?? '').join(' ')) ?? [], named.map((name) => unitNamed(name))].flat();
  return units.find((unit) => unitFits(unit, quantity))!;
}

/** The columns as a person sees them: position, time, then the elements that were met. */
export function gpxColumns(
  elements: readonly GpxElement[],
  met: ReadonlySet<string>,
  values: Log['values'],
): LogColumn[] {
  const columns: LogColumn[] = [];
  const add = (header: string, unitText: string | null, role: LogColumn['role'], why: string): void => {
    columns.push({ index: columns.length, header, unitText, role, confidence: role === null ? 0 : 1, why });
  };
  add('lat', 'deg', 'latDeg', 'the attribute of that name');
  add('lon', 'deg', 'lonDeg', 'the attribute of that name');
  add('time', null, 'dateTime', 'the element of that name');
  for (const name of met) {
    const element = elements.find(({ names }) => names.includes(name));
    if (element === undefined) add(name, null, null, 'nothing in this program uses an element of this name');
    else if (values[element.quantity] === undefined)
      add(name, element.unit.name, null, 'no point holds a value of it');
    else
      add(
        name,
        element.unit.name,
        element.quantity,
        element.saidByUser ? 'the user said so' : 'the element of that name',
      );
  }
  return columns;
}
