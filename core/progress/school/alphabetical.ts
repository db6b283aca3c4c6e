import { plainLetters } from '../../report/plain-letters.ts';

/** In the order in which a reader looks labels up: whatever the capitals and accents, and numbers by their size. */
export function alphabetical<T>(things: Iterable<T>, label: (thing: T) => string): T[] {
  return [...things]
    .map((thing) => ({ thing, key: keyOf(label(thing)), label: label(thing) }))
    .sort((a, b) => compare(a.key, b.key) || compare(a.label, b.label))
    .map(({ thing }) => thing);
}

function keyOf(label: string): string {
  return plainLetters(label.normalize('NFC').toLowerCase()).replaceAll(/\d+/g, (digits) =>
    digits.padStart(12, '0'),
  );
}

function compare(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}
