import type { InsideFix } from '../approach/flown-approach.ts';

/** Seconds as a person says them; a moment that would read as none is said to be less than one. */
export function seconds(s: number): string {
  return s < 1 ? 'less than 1 s' : `${Math.round(s)} s`;
}

const FRACTIONS: Readonly<Record<string, string>> = { '0.25': '¼', '0.5': '½', '0.75': '¾', '1': 'full' };

/** Why there is nothing before final to judge. */
export const INSIDE_FIX: Readonly<Record<InsideFix, string>> = {
  joined: 'the localizer was joined inside the fix',
  'log-begins': 'the log begins inside the final approach fix',
  'log-resumes': 'the log goes on after a gap inside the final approach fix',
};

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
