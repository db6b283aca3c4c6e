/** A date as written: three numbers in the file's order, which may yet be unknown. */
export interface DateText {
  readonly first: number;
  readonly second: number;
  readonly third: number;
  readonly separator: string;
  /** Where four digits stand, the year is known. */
  readonly yearPlace: 'first' | 'last' | 'unknown';
  /** Characters it takes. */
  readonly length: number;
}

const SEPARATED = /^(\d{1,4})([-./])(\d{1,2})\2(\d{4}|\d\d?)(?!\d)/;
const COMPACT = /^(\d{4})(\d\d)(\d\d)(?!\d)/;

/** Reads a date at the beginning of a text without padding; null when there is none. */
export function readDate(text: string): DateText | null {
  const compact = COMPACT.exec(text);
  const match = compact ?? SEPARATED.exec(text);
  if (match === null) return null;
  const [all, ...parts] = match;
  const [first, third] = [parts[0]!, parts.at(-1)!];
  const yearPlace = first.length === 4 ? 'first' : third.length === 4 ? 'last' : 'unknown';
  const isShort = third.length === 1 && first.length !== 4;
  if (isShort || first.length === 3 || (first.length === 4 && third.length === 4)) return null;
  const second = compact === null ? parts[2]! : parts[1]!;
  const separator = compact === null ? parts[1]! : '';
  return { first: +first, second: +second, third: +third, separator, yearPlace, length: all.length };
}
