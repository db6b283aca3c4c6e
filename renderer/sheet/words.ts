import { dayAndClock } from '../../core/report/plain-words.ts';
import { utcText } from '../../core/units/utc.ts';

const SIDES = { localizer: ['right', 'left'], glidepath: ['high', 'low'] } as const;

/** The clock time of a moment, as the debrief's events are told: "14:03:20". */
export function clockOf(s: number): string {
  return dayAndClock(utcText(s)!).clock;
}

/** Whole, with thousands set apart, a true minus sign, and none before a zero. */
export function wholeWords(value: number): string {
  const whole = Math.round(value);
  if (whole === 0) return '0';
  return String(whole)
    .replace('-', '−')
    .replace(/\B(?=(\d{3})+$)/, ',');
}

/** Feet of a size, whichever side: to ten above a thousand, to one below. */
export function feetWords(feet: number): string {
  const size = Math.abs(feet);
  return `${wholeWords(size > 1000 ? Math.round(size / 10) * 10 : size)} ft`;
}

/** The same with their side: "310 ft right". */
export function sidedFeet(feet: number, axis: keyof typeof SIDES): string {
  if (Number.isNaN(feet)) return 'not known';
  return Math.round(feet) === 0 ? '0 ft' : `${feetWords(feet)} ${SIDES[axis][feet > 0 ? 0 : 1]}`;
}
