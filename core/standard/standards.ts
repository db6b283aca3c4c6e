import { AIRLINE_TRANSPORT } from './shipped/airline-transport.ts';
import { INSTRUMENT_RATING } from './shipped/instrument-rating.ts';
import { LIGHT_AIRCRAFT } from './shipped/light-aircraft.ts';
import { SKILL_TEST } from './shipped/skill-test.ts';
import { STABILIZED_APPROACH } from './shipped/stabilized-approach.ts';
import type { Standard } from './standard.ts';

export const DEFAULT_STANDARD: Standard = INSTRUMENT_RATING;

/** The standards that come with the program, the default first. */
export const SHIPPED: readonly Standard[] = [
  INSTRUMENT_RATING,
  AIRLINE_TRANSPORT,
  SKILL_TEST,
  STABILIZED_APPROACH,
  LIGHT_AIRCRAFT,
];

/** The shipped standard of that id; null when there is none. */
export function standardById(id: string): Standard | null {
  return SHIPPED.find((standard) => standard.id === id) ?? null;
}
