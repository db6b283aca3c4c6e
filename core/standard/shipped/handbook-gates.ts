import { limit, symmetric, type Provenance } from '../limit.ts';
import type { GateLimits, Standard } from '../standard.ts';

/** Read in quotations only; rows `faa-h-8083-3c` of the table of published values. */
export const HANDBOOK_FINAL: Provenance = {
  code: null,
  source: 'FAA-H-8083-3C, chapter 9, stabilized approach',
  status: 'second-hand',
};

/**
 * Gates of a standard that has none of its own: sink rate, bank and 500 ft after the handbook for light aircraft,
 * needles and airspeed as that standard wants them on final.
 *
 * The handbook gives 500 to 1,000 ft/min as usual on a path of about 3 degrees; only the upper figure is a limit
 * (design, section 9). It has no gate for instrument conditions: 1,000 ft is from FSF ALAR Briefing Note 7.1 and
 * ICAO PANS-OPS Volume I, Part III, Section 4, chapter 3 (both second-hand).
 */
export function handbookGates(
  final: Pick<Standard['final'], 'localizer' | 'glidepath' | 'airspeedKt' | 'speedBasis'>,
): GateLimits {
  return {
    instrumentFt: 1000,
    visualFt: 500,
    datum: 'touchdown-zone',
    source:
      '500 ft, sink rate and bank after FAA-H-8083-3C, chapter 9 (second-hand); it has no gate for instrument conditions, so 1,000 ft after FSF ALAR Briefing Note 7.1 and ICAO PANS-OPS Volume I (second-hand); needles and airspeed as on final; heights above the touchdown zone',
    localizer: final.localizer,
    glidepath: final.glidepath,
    airspeed: final.airspeedKt,
    speedBasis: final.speedBasis,
    sinkFpm: limit(null, 1000, HANDBOOK_FINAL),
    bankDeg: symmetric(15, HANDBOOK_FINAL),
  };
}
