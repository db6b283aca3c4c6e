import type { Unknown } from './debrief.ts';

/** A number as an answer holds it: null for what is not known. */
export function known(value: number): number | null {
  return Number.isNaN(value) ? null : value;
}

/** The sentences for those keys of an object that are null. */
export function unknownOf(
  values: Readonly<Record<string, unknown>>,
  why: Readonly<Record<string, string>>,
): Unknown {
  const unknown: Record<string, string> = {};
  for (const key of Object.keys(why)) if (values[key] === null) unknown[key] = why[key]!;
  return unknown;
}
