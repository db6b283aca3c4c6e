import { utcText } from '../../core/units/utc.ts';

/** The clock time of a moment, as the debrief's events are told: "14:03:20". */
export function clockOf(s: number, _zone: string): string {
  return utcText(Math.round(s))!.slice(11, 19);
}

/** Whole, with thousands set apart and a true minus sign. */
export function wholeWords(value: number): string {
  return String(Math.round(value))
    .replace('-', '−')
    .replace(/\B(?=(\d{3})+$)/, ',');
}
