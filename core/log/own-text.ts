/**
 * The same text as a string of its own. A slice keeps the whole text that it was cut from in memory; for a name that
 * outlives its block of the file that is a megabyte for a word.
 */
export function ownText(slice: string): string {
  return Array.from(slice).join('');
}
