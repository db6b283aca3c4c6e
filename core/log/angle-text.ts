/** Up to three numbers with signs or blanks between them, and a letter of the hemisphere before or behind. */
const ANGLE =
  /^([NSEW])?\s*([+-]?\d+(?:[.,]\d+)?)(?:[\s°º:]+(\d+(?:[.,]\d+)?)(?:[\s'′’:]+(\d+(?:[.,]\d+)?))?)?[\s°º'′’"″”]*([NSEW])?$/i;
/** `47d30m36s`, where the s is no south. */
const LETTERED = /(\d)\s*d\s*(\d+)\s*m\s*(\d+(?:[.,]\d+)?)\s*s/i;

/**
 * Degrees of a latitude or longitude written for people: `47°30'12"N`, `N47 30.123`, `8.5 W`. NaN when it is none,
 * when minutes or seconds reach 60, when it names a hemisphere of the other axis or two, and for O, which is east in
 * German and west in French and Spanish.
 */
export function parseAngle(text: string, axis: 'lat' | 'lon'): number {
  const match = ANGLE.exec(text.trim().replace(LETTERED, '$1 $2 $3 '));
  if (match === null) return NaN;
  const [, before, degreeText, minuteText = '0', secondText = '0', behind] = match;
  const letter = (before ?? behind ?? '').toUpperCase();
  const isForeign = letter !== '' && !(axis === 'lat' ? 'NS' : 'EW').includes(letter);
  if (isForeign || (before !== undefined && behind !== undefined)) return NaN;
  const [degrees, minutes, seconds] = [degreeText!, minuteText, secondText].map((part) =>
    Number(part.replace(',', '.')),
  );
  if (minutes! >= 60 || seconds! >= 60) return NaN;
  const size = Math.abs(degrees!) + minutes! / 60 + seconds! / 3600;
  // The sign is read from the text: −0 59 53.8 lies south of the equator.
  const negative = degreeText!.startsWith('-') || letter === 'S' || letter === 'W';
  return negative ? -size : size;
}
