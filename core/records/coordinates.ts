/** `N39493182`: degrees, minutes, seconds and hundredths of one (ARINC 424 5.36). Null for anything else. */
export function latitudeOf(text: string): number | null {
  return /^[NS]\d{8}$/.test(text) ? degreesOf(text, 2, 'S', 90) : null;
}

/** `W104393810` (ARINC 424 5.37), −180 ≤ longitude < 180. Null for anything else. */
export function longitudeOf(text: string): number | null {
  if (!/^[EW]\d{9}$/.test(text)) return null;
  const lonDeg = degreesOf(text, 3, 'W', 180);
  return lonDeg === 180 ? -180 : lonDeg;
}

function degreesOf(text: string, figures: number, negative: string, most: number): number | null {
  const degrees = Number(text.slice(1, 1 + figures));
  const minutes = Number(text.slice(1 + figures, 3 + figures));
  const hundredths = Number(text.slice(3 + figures));
  if (minutes >= 60 || hundredths >= 6000) return null;
  const value = (degrees * 360_000 + minutes * 6000 + hundredths) / 360_000;
  if (value > most) return null;
  return text.startsWith(negative) && value !== 0 ? -value : value;
}
