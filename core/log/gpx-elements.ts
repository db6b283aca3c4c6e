import { QUANTITY_OF_KIND } from './altitude-kind.ts';
import { GPX_WORDS } from './gpx-words.ts';
import { unitNamed } from './column-units.ts';
import type { ReadColumn } from './finish-log.ts';
import type { ColumnRole, Log, LogColumn, LogSettings, Quantity, UnitFrom, UnitRead } from './log.ts';
import { isQuantity, QUANTITY_RULES, unitFits } from './quantity-rules.ts';
import { unitInWords } from './stated-units.ts';
import type { Unit } from './unit-words.ts';

/** What is read from track points for one quantity. */
export interface GpxElement {
  readonly quantity: Quantity;
  /** Local names in lower case that hold it; the first one a point has counts. */
  readonly names: readonly string[];
  /** The same for a person. */
  readonly header: string;
  readonly unit: Unit;
  /** How the unit is known: GPX writes none. */
  readonly unitFrom: UnitFrom;
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
    byQuantity.set(quantity, { quantity, names, header: names.join(' or '), ...unit, saidByUser });
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

/** The user's unit, fitting or not, else the first that fits: the element's, GPX's metric one, the trade's. */
function unitFor(
  quantity: Quantity,
  said: string | undefined,
  usual: string | null,
): Pick<GpxElement, 'unit' | 'unitFrom'> {
  const stated = unitInWords(said ?? '');
  if (stated !== undefined) return { unit: stated, unitFrom: 'user' };
  const { usualUnit, unitMatters } = QUANTITY_RULES[quantity];
  const named = [usual, 'm', 'm/s', usualUnit].flatMap((name) => name ?? []);
  const unit = named.map((name) => unitNamed(name)).find((candidate) => unitFits(candidate, quantity))!;
  return { unit, unitFrom: unit.name === usual || !unitMatters ? 'usual' : 'assumed' };
}

/** The elements whose unit the user states, each under the name that it was stated by. */
export function statedElements(elements: readonly GpxElement[]) {
  return elements.flatMap(({ names, quantity, unit, unitFrom }) =>
    unitFrom === 'user' ? { header: names[0]!, role: quantity, unit } : [],
  );
}

/** The user's units by the names that GPX elements go by: any case will do. */
export function unitsByElement(settings: LogSettings): LogSettings {
  return { ...settings, units: Object.fromEntries(byName(settings.units)) };
}

/** Needle elements that were met, as columns, so that their scale can be found. */
export function needleColumns(elements: readonly GpxElement[], columns: readonly LogColumn[]): ReadColumn[] {
  return columns.flatMap(({ index, header, role }) => {
    const element = elements.find(({ names, quantity }) => quantity === role && names.includes(header));
    if (element === undefined || QUANTITY_RULES[element.quantity].dimension !== 'needle') return [];
    const { quantity, unit, unitFrom } = element;
    return { column: { index, header, unit: unitFrom === 'user' ? unit : null }, quantity, from: unitFrom };
  });
}

/** The columns as a person sees them: position, time, then the elements that were met. */
export function gpxColumns(
  elements: readonly GpxElement[],
  met: ReadonlySet<string>,
  values: Log['values'],
): LogColumn[] {
  const columns: LogColumn[] = [];
  const add = (
    header: string,
    unitText: string | null,
    role: LogColumn['role'],
    why: string,
    unitRead: UnitRead | null = null,
  ): void => {
    const confidence = role === null ? 0 : 1;
    columns.push({ index: columns.length, header, unitText, unitRead, role, confidence, why });
  };
  add('lat', 'deg', 'latDeg', 'the attribute of that name');
  add('lon', 'deg', 'lonDeg', 'the attribute of that name');
  add('time', null, 'dateTime', 'the element of that name');
  for (const name of met) {
    const element = elements.find(({ names }) => names.includes(name));
    if (element === undefined) add(name, null, null, 'nothing in this program uses an element of this name');
    else if (values[element.quantity] === undefined) add(name, null, null, 'no point holds a value of it');
    else add(name, null, element.quantity, whyOf(element), unitReadOf(element));
  }
  return columns;
}

function whyOf({ saidByUser, unit, unitFrom }: GpxElement): string {
  const isUnitSaid = unitFrom === 'user';
  if (saidByUser) return isUnitSaid ? `the user said so, and that it is in ${unit.name}` : 'the user said so';
  const why = 'the element of that name';
  return isUnitSaid ? `${why}; the user said that it is in ${unit.name}` : why;
}

function unitReadOf({ unit, unitFrom }: GpxElement): UnitRead | null {
  return unit.dimension === 'other' ? null : { name: unit.name, from: unitFrom };
}
