/** Letters that are no letter with a mark on it, as they are written where a keyboard lacks them. */
const PLAIN: Readonly<Record<string, string>> = {
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  ø: 'o',
  ł: 'l',
  đ: 'd',
  ð: 'd',
  þ: 'th',
  ı: 'i',
};

/** A text in lower case without its accents: "jörg" is "jorg", "łukasz" is "lukasz". */
export function plainLetters(lower: string): string {
  return lower
    .replaceAll(/[ßæœøłđðþı]/gu, (letter) => PLAIN[letter]!)
    .normalize('NFD')
    .replaceAll(/\p{M}/gu, '');
}
