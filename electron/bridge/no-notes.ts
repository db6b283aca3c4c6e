import type { Notes } from './calls.ts';

/** Notes before anything was kept. Apart from the contract, so that the page need not carry its checks. */
export const NO_NOTES: Notes = {
  format: 'halfdot-notes/1',
  facilities: [],
  standards: [],
  mappings: {},
  recents: [],
  settings: { dots: 2, standard: 'instrument-rating', theme: 'system' },
};
