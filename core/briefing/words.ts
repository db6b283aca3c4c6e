import { decimal } from '../facility/wording.ts';
import { dayAndClock } from '../report/plain-words.ts';
import { readingFeet } from '../report/reading-feet.ts';
import { whole } from '../units/whole.ts';
import type { BriefedFix, BriefedGates, Briefing } from './briefing.ts';

/** To be filled in by hand. */
export const BLANK = '________';

export const DATUM_WORDS: Readonly<Record<BriefedGates['datum'], string>> = {
  airport: 'airport',
  'touchdown-zone': 'touchdown zone',
  threshold: 'threshold',
};

/** What every page of the sheet is marked with. */
export function briefingMark({ enteredBy, enteredOn }: Pick<Briefing, 'enteredBy' | 'enteredOn'>): string {
  const day = enteredOn === null ? BLANK : dayAndClock(`${enteredOn}T00:00:00Z`).day;
  return `Training aid. Data entered by ${enteredBy ?? BLANK}, of ${day}. Not for navigation. Use the current chart.`;
}

/** "Petrelholm ILS 07, IZPE, 110.95 MHz". */
export function facilityWords({ facility: { name, ident, frequencyMHz } }: Briefing): string {
  const radio = [ident, frequencyMHz === null ? null : `${frequencyMHz.toFixed(2)} MHz`];
  return [name.trim(), ...radio.filter((part) => part !== null)].join(', ');
}

/** "−12 °C". */
export function temperatureWords(temperatureC: number): string {
  return `${decimal(temperatureC).replace('-', '−')} °C`;
}

/**
 * What the altimeter shows in that air, and what the published correction makes of it where that is another, as it is
 * at a high aerodrome; null where no temperature is known.
 */
export function altimeterWords(
  { altimeterFt, byTableFt }: Pick<BriefedFix, 'altimeterFt' | 'byTableFt'>,
  temperatureC: number | null,
): string | null {
  if (altimeterFt === null || byTableFt === null || temperatureC === null) return null;
  const shown = `the altimeter shows ${readingFeet(altimeterFt)} ft at ${temperatureWords(temperatureC)}`;
  // The table is of cold air only.
  const isAlike = temperatureC > 10 || readingFeet(byTableFt) === readingFeet(altimeterFt);
  return isAlike ? shown : `${shown} (${readingFeet(byTableFt)} ft by the table, made for sea level)`;
}

/** What there is to climb to, and where to find the rest when nothing was entered. */
export function missedApproachHead({ missedApproach: { climbToFt, steps } }: Briefing): string {
  if (climbToFt === null && steps.length === 0) return 'Missed approach: not entered, see the current chart';
  return climbToFt === null ? 'Missed approach' : `Missed approach: climb to ${whole(climbToFt)} ft`;
}
