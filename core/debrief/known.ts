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
  return Object.fromEntries(Object.entries(why).filter(([key]) => values[key] === null));
}
