import { plainLetters } from '../../core/report/plain-letters.ts';

/** The other way in which some are written without their marks. */
const SPELT_OUT: Readonly<Record<string, string>> = { ä: 'ae', ö: 'oe', ü: 'ue', ø: 'oe', å: 'aa' };

/**
 * What the spellings of one name have in common, whatever case, accents, marks between the words and order of the
 * words: "Brambling, Nils" and "nils_brambling" share a key. Empty for what holds no letter.
 */
export function nameKeys(name: string): readonly string[] {
  const lower = name.normalize('NFC').toLowerCase().replaceAll(/['’.]/gu, '');
  return [...new Set([lower, speltOut(lower)].map(keyOf))].filter((key) => key !== '');
}

/**
 * A text as it is searched and sorted, without case and accents: "mowe" of "Möwe", and where letters can be spelt out, on
 * a line of its own how it is then, "moewe".
 */
export function folded(text: string): string {
  const lower = text.normalize('NFC').toLowerCase();
  return [...new Set([lower, speltOut(lower)].map(plainLetters))].join('\n');
}

/** Whether two texts are spellings of one name. */
export function isSameName(a: string, b: string): boolean {
  const keys = nameKeys(a);
  return nameKeys(b).some((key) => keys.includes(key));
}

/**
 * Whom a name means: who is written so, in whatever case; where nobody is, everybody whose name is a spelling of it. Page
 * and host ask this alike, so that who is added is said before.
 */
export function meantBy<Named extends { readonly name: string }>(
  people: readonly Named[],
  name: string,
): Named[] {
  const sought = plainCase(name.trim());
  const written = people.filter((one) => plainCase(one.name) === sought);
  // "Student 2 (3)" is no other spelling of "Student 3 (2)".
  if (written.length > 0 || /\d/.test(name)) return written;
  return people.filter((one) => isSameName(one.name, name));
}

/** As SQLite compares names that have to differ: A to Z alone in whatever case. */
function plainCase(name: string): string {
  return name.replaceAll(/[A-Z]/g, (letter) => letter.toLowerCase());
}

/** A word of a header without case, accents and what stands between its letters: "First name" is `firstname`. */
export function headerWord(cell: string): string {
  return plainLetters(cell.normalize('NFC').toLowerCase()).replaceAll(/[^\p{L}\p{N}]/gu, '');
}

/** A name as it is kept: "Brambling, Nils" turned to "Nils Brambling", and one space between words. */
export function nameInOrder(written: string): string {
  const [last, first, ...more] = written.split(',').map((part) => part.trim().replaceAll(/\s+/g, ' '));
  const isTurned = last && first && more.length === 0 && !/^(?:jr|sr|ii|iii|iv)\.?$/i.test(first);
  return isTurned ? `${first} ${last}` : written.trim().replaceAll(/\s+/g, ' ');
}

/** The words in alphabetical order: a roster may put the family name first, and a folder last. */
function keyOf(lower: string): string {
  const words = plainLetters(lower).split(/[^\p{L}\p{N}]+/u);
  return words
    .filter((word) => word !== '')
    .sort()
    .join(' ');
}

function speltOut(lower: string): string {
  return lower.replaceAll(/[äöüøå]/gu, (letter) => SPELT_OUT[letter]!);
}
