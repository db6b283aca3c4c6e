import type { ProgressUnit } from './progress.ts';

interface Amount {
  readonly scale: number;
  readonly digits: number;
  /** Behind a figure, and apart from one. */
  readonly words: string;
  readonly name: string;
}

/** How a change or a difference is printed, by unit; percentage points for shares. */
const AMOUNTS: Readonly<Record<ProgressUnit, Amount>> = {
  'full scale': { scale: 1, digits: 3, words: ' of full scale', name: 'full scale' },
  kt: { scale: 1, digits: 2, words: ' kt', name: 'kt' },
  share: { scale: 100, digits: 1, words: ' percentage points', name: 'percentage points' },
  level: { scale: 1, digits: 2, words: ' of a level', name: 'levels' },
};

/** Which of two a gain is. */
export function sideOf(gain: number): 'better' | 'worse' {
  return gain > 0 ? 'better' : 'worse';
}

/** The size of a change with its unit: "0.031 of full scale". */
export function amount(value: number, unit: ProgressUnit): string {
  return figure(value, unit) + AMOUNTS[unit].words;
}

/** The size alone. */
export function figure(value: number, unit: ProgressUnit): string {
  const { scale, digits } = AMOUNTS[unit];
  const size = Math.abs(value) * scale;
  const least = 10 ** -digits;
  return size > 0 && size < least / 2 ? `less than ${least.toFixed(digits)}` : size.toFixed(digits);
}

/** A unit apart from its figures. */
export function unitName(unit: ProgressUnit): string {
  return AMOUNTS[unit].name;
}
