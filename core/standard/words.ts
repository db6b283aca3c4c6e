/** Seconds as a person says them; a moment that would read as none is said to be less than one. */
export function seconds(s: number): string {
  return s < 1 ? 'less than 1 s' : `${Math.round(s)} s`;
}

const FRACTIONS: Readonly<Record<string, string>> = { '0.25': '¼', '0.5': '½', '0.75': '¾', '1': 'full' };

/** A needle limit as it is said aloud: "¾ scale". */
export function scaleWords(fullScale: number): string {
  return `${FRACTIONS[String(fullScale)] ?? fullScale} scale`;
}

/** A limit about a target: "±10 kt", "−5/+10 kt". */
export function bandWords(lower: number | null, upper: number | null, unit: string): string {
  if (lower !== null && upper !== null && lower === -upper) return `±${upper} ${unit}`;
  const below = lower === null ? '' : lower > 0 ? `+${lower}` : `−${-lower}`;
  const above = upper === null ? '' : upper < 0 ? `−${-upper}` : `+${upper}`;
  return `${[below, above].filter((side) => side !== '').join('/')} ${unit}`;
}
