import { whole } from '../../units/whole.ts';
import type { Needle } from './asked.ts';

const SIDES = { localizer: ['right', 'left'], glidepath: ['high', 'low'] } as const;
/** Feet of height are said to these. */
const STEP_FT = 10;

/** Where the aircraft was, by the sign of its deviation. */
export function sideWords(fullScale: number, needle: Needle): string {
  return SIDES[needle][fullScale > 0 ? 0 : 1];
}

/** A needle as it is said aloud: "0.8 of full scale", or "full scale" and more beyond. */
export function scaleFraction(fullScale: number): string {
  const size = Math.abs(fullScale);
  return size >= 0.995 ? 'full scale and more' : `${size.toFixed(size < 0.1 ? 2 : 1)} of full scale`;
}

/** Feet as a person says them. */
export function feet(ft: number): string {
  return `${whole(Math.round(Math.abs(ft) / STEP_FT) * STEP_FT)} ft`;
}

/** Feet near the ground, where each counts. */
export function singleFeet(ft: number): string {
  return `${whole(Math.abs(ft))} ft`;
}

export function seconds(s: number): string {
  return s < 1.5 ? '1 second' : `${whole(s)} seconds`;
}

export function miles(nm: number): string {
  return `${nm.toFixed(1)} NM`;
}

/** "a", "a and b", "a, b and c". */
export function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)!}`;
}
