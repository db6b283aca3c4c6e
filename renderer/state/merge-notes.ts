import type { Notes } from '../../electron/bridge/calls.ts';
import { MOST_RECENTS } from '../../electron/bridge/kept-limits.ts';

type Notable = Readonly<Record<string, unknown>>;

/**
 * Notes in which what was changed here and what another window has changed since both stand: `base` is what this page
 * started from, `mine` what it made of it, `theirs` what is kept now. Where both changed the same value, mine holds,
 * also where it takes back what was said; but a change holds against a removal, whoever made it.
 */
export function mergeNotes(base: Notes, mine: Notes, theirs: Notes): Notes {
  const notes = merged(base, mine, theirs) as Notes;
  if (notes === mine || notes === theirs) return notes;
  // Texts of one form, so that they stand in the order of their times; those without one are the oldest.
  const newestFirst = notes.recents.toSorted((a, b) =>
    (a.openedUtc ?? '') < (b.openedUtc ?? '') ? 1 : (a.openedUtc ?? '') > (b.openedUtc ?? '') ? -1 : 0,
  );
  return { ...notes, recents: newestFirst.slice(0, MOST_RECENTS) };
}

/** Undefined stands for what is not there. */
function merged(base: unknown, mine: unknown, theirs: unknown): unknown {
  if (isSame(mine, base)) return theirs;
  if (isSame(theirs, base)) return mine;
  if (isList(mine) && isList(theirs)) {
    const both = mergedByKey(byKey(isList(base) ? base : []), byKey(mine), byKey(theirs));
    return Object.values(both);
  }
  if (isNotable(mine) && isNotable(theirs)) return mergedByKey(isNotable(base) ? base : {}, mine, theirs);
  return mine === undefined ? theirs : mine;
}

function mergedByKey(base: Notable, mine: Notable, theirs: Notable): Notable {
  const keys = [...new Set([...Object.keys(mine), ...Object.keys(theirs)])];
  const entries = keys.map((key) => [key, merged(base[key], mine[key], theirs[key])] as const);
  return Object.fromEntries(entries.filter(([, value]) => value !== undefined));
}

/** Lists whose entries have a name of their own, such as facilities and recents; others are values as a whole. */
function isList(value: unknown): value is readonly Notable[] {
  return Array.isArray(value) && value.every((entry) => isNotable(entry) && typeof keyOf(entry) === 'string');
}

function keyOf({ id, sha256 }: Notable): unknown {
  return id ?? sha256;
}

/** With a mark before each key: a key that looks like a number would be put before the others. */
function byKey(list: readonly Notable[]): Notable {
  return Object.fromEntries(list.map((entry) => [`#${keyOf(entry)}`, entry]));
}

function isNotable(value: unknown): value is Notable {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isSame(a: unknown, b: unknown): boolean {
  return a === b || JSON.stringify(a) === JSON.stringify(b);
}
