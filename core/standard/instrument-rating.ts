/**
 * The needle limit of the FAA instrument rating on final: no more than ¾ scale of either needle from the final
 * approach fix to decision altitude.
 *
 * Source: FAA-S-ACS-8C, IR.VI.B precision approach, S12 (published); row `faa-s-acs-8c`, phase "final, FAF to DA/DH".
 */
export const INSTRUMENT_RATING = {
  id: 'instrument-rating',
  title: 'Instrument rating, precision approach',
  source: 'FAA-S-ACS-8C, IR.VI.B',
  code: 'IR.VI.B.S12',
  /** Fraction of full scale, each side. */
  finalNeedleFullScale: 0.75,
} as const;
