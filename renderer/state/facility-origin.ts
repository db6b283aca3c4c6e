import { isOfCycle } from '../../core/records/record-words.ts';
import { isGroup, type Group } from './json-group.ts';

/** Where a value comes from that nobody typed; null for one that was typed. */
export function sourceOf(root: Group, path: readonly string[]): string | null {
  const source = sourcesIn(root)[path.join('.')];
  return typeof source === 'string' ? source : null;
}

/** Whether a value is a draft's that nobody has confirmed. */
export function isUnconfirmed(root: Group, path: readonly string[]): boolean {
  return unconfirmedIn(root).includes(path.join('.'));
}

/** Paths of a draft that nobody has confirmed. */
export function unconfirmedIn(root: Group): readonly string[] {
  const landing = groupIn(groupIn(root, 'origin'), 'landing');
  const paths = landing['unconfirmed'];
  return Array.isArray(paths) ? paths.filter((path) => typeof path === 'string') : [];
}

/** The facility with a value, or all below a path, confirmed; it stays where it comes from. */
export function withConfirmed(root: Group, path: readonly string[]): Group {
  return withOrigin(root, sourcesIn(root), withoutBelow(unconfirmedIn(root), path));
}

/** The facility after a value was typed, or taken out: it comes from the user's own hand, which confirms it. */
export function withoutOrigin(root: Group, path: readonly string[]): Group {
  const sources = sourcesIn(root);
  const kept = Object.fromEntries(
    withoutBelow(Object.keys(sources), path).map((key) => [key, sources[key]] as const),
  );
  return withOrigin(root, kept, withoutBelow(unconfirmedIn(root), path));
}

function withOrigin(root: Group, sources: Group, unconfirmed: readonly string[]): Group {
  if (!isGroup(root['origin'])) return root;
  const { sources: _, landing, cycle, ...others } = root['origin'];
  // Of records nothing may be left: then there is no cycle to be out of.
  const isOfRecords = Object.values(sources).some((source) => isOfCycle(String(source), String(cycle)));
  const origin = {
    ...others,
    ...(Object.keys(sources).length > 0 && { sources }),
    ...(cycle !== undefined && isOfRecords && { cycle }),
    ...(landing !== undefined && { landing: isGroup(landing) ? { ...landing, unconfirmed } : landing }),
  };
  const { origin: __, ...rest } = root;
  return Object.keys(origin).length > 0 ? { ...rest, origin } : rest;
}

function withoutBelow(keys: readonly string[], path: readonly string[]): string[] {
  const above = path.join('.');
  return keys.filter((key) => key !== above && !key.startsWith(`${above}.`));
}

function sourcesIn(root: Group): Group {
  return groupIn(groupIn(root, 'origin'), 'sources');
}

function groupIn(group: Group, key: string): Group {
  const value = group[key];
  return isGroup(value) ? value : {};
}
