import { measuredWords } from '../../core/report/measured-words.ts';
import { dayAndClock } from '../../core/report/plain-words.ts';
import type { Dots, SheetExcursion } from '../../core/sheet/sheet.ts';
import { utcText } from '../../core/units/utc.ts';
import { whole } from '../../core/units/whole.ts';

/** The clock time of a moment, as the debrief's events are told: "14:03:20". */
export function clockOf(s: number): string {
  return dayAndClock(utcText(s)!).clock;
}

/** Feet of a size, whichever side: to ten above a thousand, to one below. */
export function feetWords(feet: number): string {
  const size = Math.abs(feet);
  return `${whole(size > 1000 ? Math.round(size / 10) * 10 : size)} ft`;
}

/** How far and how long something was outside: "high 2.3, 50 s, promptly corrected". */
export function excursionWords(
  { criterionId, unit, peak, outsideS, prompt, untilEstablished }: SheetExcursion,
  dots: Dots,
): string {
  const seconds = `${Math.max(1, Math.round(outsideS))} s`;
  const lasted = untilEstablished ? `not established for ${seconds}` : seconds;
  return `${measuredWords(criterionId, unit, peak, dots)}, ${lasted}${prompt ? ', promptly corrected' : ''}`;
}
