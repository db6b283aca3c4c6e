import { FACILITY_FORMAT } from '../../core/facility/facility-schema.ts';
import { readJson } from '../../core/json/json-text.ts';
import { pathWords } from '../../core/json/path-words.ts';
import { FACILITY_FIELDS, type FacilityField } from './facility-fields.ts';
import { withConfirmed, withoutOrigin } from './facility-origin.ts';
import { textOf, valueTyped } from './facility-typing.ts';
import { isGroup, type Group } from './json-group.ts';

/** A facility's text as a form can edit it; or why it can only be mended as text. */
export type Draft =
  { readonly ok: true; readonly root: Group } | { readonly ok: false; readonly why: string };

/** A facility of which nothing is known yet. No value is put in for the user to overlook. */
export const NEW_FACILITY = written({ format: FACILITY_FORMAT });

/**
 * Reads a facility's text for a form. What a form would lose or could not show is left to the text: what is no JSON,
 * a key given twice, and a value where a group should stand.
 */
export function draftOf(text: string): Draft {
  const json = readJson(text);
  if (!json.ok) return { ok: false, why: `Line ${json.line}, column ${json.column}: ${json.problem}.` };
  const [twice] = json.repeated;
  if (twice) return { ok: false, why: `${pathWords(twice)} is given twice: keep the one that is right.` };
  const { value: root } = json;
  if (!isGroup(root)) return { ok: false, why: 'It is no group in braces.' };
  const wrong = GROUP_PATHS.find((path) => {
    const value = valueAt(root, path);
    return value !== undefined && !isGroup(value);
  });
  return wrong ? { ok: false, why: `${pathWords(wrong)} is no group in braces.` } : { ok: true, root };
}

/** The value at a path; undefined where there is none. */
export function valueAt(root: Group, path: readonly (string | number)[]): unknown {
  let at: unknown = root;
  for (const key of path) at = isGroup(at) && Object.hasOwn(at, key) ? at[key] : undefined;
  return at;
}

/** The text of a facility after something was typed into a field of its form; the same where that changes nothing. */
export function withTyped(text: string, field: FacilityField, typed: string): string {
  return withValue(text, field.path, valueTyped(field, typed));
}

/** The text of a facility without a whole group of it. */
export function without(text: string, path: readonly string[]): string {
  return withValue(text, path, undefined);
}

/** The text of a draft with a value confirmed. */
export function withConfirmedIn(text: string, path: readonly string[]): string {
  const draft = draftOf(text);
  return draft.ok ? written(withConfirmed(draft.root, path)) : text;
}

/** The text of a copy, named as one. */
export function copyOf(text: string): string {
  const name = nameIn(text);
  return name === '' ? text : withValue(text, ['name'], `${name} (copy)`);
}

/** The name that a text gives itself, usable or not; empty where it gives none. */
export function nameIn(text: string): string {
  const draft = draftOf(text);
  const name = draft.ok ? draft.root['name'] : undefined;
  return typeof name === 'string' ? name.trim() : '';
}

/**
 * What a field shows: what was typed into it for as long as that is what the file holds, else the file's own value.
 * So "S31 12.5" stays as it was typed, and a change of the text is seen in the form.
 */
export function shownIn(root: Group, field: FacilityField, typed: string | null): string {
  const value = valueAt(root, field.path);
  return typed !== null && valueTyped(field, typed) === value ? typed : textOf(field, value);
}

function withValue(text: string, path: readonly string[], value: unknown): string {
  const draft = draftOf(text);
  if (!draft.ok || valueAt(draft.root, path) === value) return text;
  return written(withoutOrigin(changed(draft.root, path, value, []), path));
}

function written(root: Group): string {
  return `${JSON.stringify(root, null, 2)}\n`;
}

/** The group with another value at a path; undefined takes it out, and with it the groups that it leaves empty. */
function changed(
  group: Group,
  [key, ...rest]: readonly string[],
  value: unknown,
  above: readonly string[],
): Group {
  const inner = group[key!];
  const next = rest.length === 0 ? value : changed(asGroup(inner), rest, value, [...above, key!]);
  const isGone = next === undefined || (isGroup(next) && Object.keys(next).length === 0);
  const others = Object.entries(group).filter(([name]) => name !== key);
  if (isGone) return Object.fromEntries(others);
  if (Object.hasOwn(group, key!))
    return Object.fromEntries(Object.entries(group).map(([name, old]) => [name, name === key ? next : old]));
  others.splice(placeOf(key!, others, above), 0, [key!, next]);
  return Object.fromEntries(others);
}

/** Before the first key that the file format names later, so that a file typed in any order reads well. */
function placeOf(key: string, entries: readonly [string, unknown][], above: readonly string[]): number {
  const order = KEY_ORDER[above.join('.')] ?? [];
  const later = new Set(order.slice(order.indexOf(key) + 1));
  const found = entries.findIndex(([name]) => later.has(name));
  return found === -1 ? entries.length : found;
}

/** Keys of the groups in the order that the file format has them, by the path of the group. */
const KEY_ORDER: Readonly<Record<string, readonly string[]>> = {
  '': [
    'format',
    'name',
    'ident',
    'frequencyMHz',
    'airportElevationFt',
    'runway',
    'localizer',
    'glidepath',
    'minimums',
    'finalApproachFix',
    'missedApproach',
    'magneticVariationDeg',
    'origin',
  ],
  runway: [
    'designator',
    'threshold',
    'farEnd',
    'trueBearingDeg',
    'lengthFt',
    'widthFt',
    'touchdownZoneElevationFt',
  ],
  localizer: ['courseTrueDeg', 'courseMagneticDeg', 'antenna', 'antennaSetbackFt', 'courseWidthDeg'],
  glidepath: ['angleDeg', 'thresholdCrossingHeightFt', 'antenna', 'fullScaleDeg'],
  minimums: ['decisionAltitudeFt', 'rvrFt'],
  finalApproachFix: ['name', 'distanceNm', 'altitudeFt', 'dmeNm'],
  missedApproach: ['climbToFt', 'instructions'],
  'runway.threshold': ['latDeg', 'lonDeg', 'elevationFt'],
  'runway.farEnd': ['latDeg', 'lonDeg', 'elevationFt'],
  'localizer.antenna': ['latDeg', 'lonDeg', 'elevationFt'],
  'glidepath.antenna': ['latDeg', 'lonDeg', 'elevationFt'],
};

/** Every group above a field, the outer ones first. */
const GROUP_PATHS = FACILITY_FIELDS.flatMap(({ path }) =>
  path.slice(0, -1).map((_, depth) => path.slice(0, depth + 1)),
);

function asGroup(value: unknown): Group {
  return isGroup(value) ? value : {};
}
