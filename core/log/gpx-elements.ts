import { GPX_WORDS } from './gpx-words.ts';
import type { LogColumn, LogSettings, Quantity } from './log.ts';
import { isQuantity } from './recognise-column.ts';
import { UNITS } from './unit-words.ts';
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

/** The elements to look for, the user's wishes applied. */
export function gpxElements(settings: LogSettings): GpxElement[] {
  const wishes = new Map(
    Object.entries(settings.columns ?? {}).map(([header, role]) => [header.toLowerCase(), role]),
  );
  const byQuantity = new Map<Quantity, GpxElement>();
  for (const [name, [usual, unitName]] of GPX_WORDS) {
    const role = wishes.has(name) ? wishes.get(name)! : usual;
    if (role === null || !isQuantity(role)) continue;
    const names = [...(byQuantity.get(role)?.names ?? []), name];
    const unit = UNITS.find((candidate) => candidate.name === unitName)!;
    const saidByUser = wishes.has(name);
    byQuantity.set(role, { quantity: role, names, header: names.join(' or '), unit, saidByUser });
  }
  return [...byQuantity.values()];
}

/** The columns as a person sees them: position, time, then the elements that were met. */
export function gpxColumns(elements: readonly GpxElement[], met: ReadonlySet<string>): LogColumn[] {
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
