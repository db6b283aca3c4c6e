const ANGLE =
  /^([NSEWO])?\s*([+-]?\d+(?:[.,]\d+)?)(?:\s*[°ºd:\s]\s*(?:(\d+(?:[.,]\d+)?)(?:\s*['′’m:\s]\s*(?:(\d+(?:[.,]\d+)?)\s*(?:"|″|”|''|s)?)?)?)?)?\s*([NSEWO])?$/i;

/**
 * Degrees of a latitude or longitude written for people: `47°30'12"N`, `N47 30.123`, `8.5 W`. NaN when it is none,
 * when minutes or seconds reach 60, or when it names no or two hemispheres for an axis it is not of.
 */
export function parseAngle(text: string, axis: 'lat' | 'lon'): number {
  const match = ANGLE.exec(text.trim());
  if (match === null) return NaN;
  const letter = (match[1] ?? match[5] ?? '').toUpperCase();
  if (match[1] !== undefined && match[5] !== undefined) return NaN;
  if (letter !== '' && !(axis === 'lat' ? 'NS' : 'EWO').includes(letter)) return NaN;
  const [degrees, minutes, seconds] = [match[2]!, match[3] ?? '0', match[4] ?? '0'].map((part) =>
    Number(part.replace(',', '.')),
  );
  if (minutes! >= 60 || seconds! >= 60) return NaN;
  const size = Math.abs(degrees!) + minutes! / 60 + seconds! / 3600;
  // The sign is read from the text: −0 59 53.8 lies south of the equator.
  const negative = match[2]!.startsWith('-') || letter === 'S' || letter === 'W';
  return negative ? -size : size;
}
