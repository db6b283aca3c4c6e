/**
 * The needle limits of the FAA instrument rating: no more than ¾ scale of the localizer before final, and of either
 * needle from the final approach fix to decision altitude.
 *
 * Source: FAA-S-ACS-8C, IR.VI.B precision approach, S9 and S12 (published); rows `faa-s-acs-8c`, phases "before final
 * segment" and "final, FAF to DA/DH" of tests/reference/tolerance-standards.json.
 */
export const INSTRUMENT_RATING = {
  id: 'instrument-rating',
  title: 'Instrument rating, precision approach',
  source: 'FAA-S-ACS-8C, IR.VI.B',
  /** Fractions of full scale, each side. */
  beforeFinalLocalizerFullScale: 0.75,
  finalNeedleFullScale: 0.75,
} as const;
