import { whole } from '../../units/whole.ts';
import type { Needle } from './asked.ts';

const SIDES = { localizer: ['right', 'left'], glidepath: ['high', 'low'] } as const;
/** Feet above a thousand are said to these. */
const STEP_FT = 10;
const SINGLE_BELOW_FT = 1000;

/** Where the aircraft was, by the sign of its deviation. */
export function sideWords(fullScale: number, needle: Needle): string {
  return SIDES[needle][fullScale > 0 ? 0 : 1];
}

/** A needle as it is said aloud: "0.8 of full scale", "full scale", "more than full scale". */
export function scaleFraction(fullScale: number): string {
  const size = Math.abs(fullScale);
  if (size >= 1.05) return 'more than full scale';
  if (size >= 0.95) return 'full scale';
  return `${size.toFixed(size < 0.095 ? 2 : 1)} of full scale`;
}

/** Feet as a person says them: to ten above a thousand. */
export function feet(ft: number): string {
  const size = Math.abs(ft);
  const step = size < SINGLE_BELOW_FT ? 1 : STEP_FT;
  return `${whole(Math.round(size / step) * step)} ft`;
}

export function seconds(s: number): string {
  return s < 1.5 ? '1 second' : `${whole(s)} seconds`;
}

export function miles(nm: number): string {
  return `${nm.toFixed(1)} NM`;
}
