import { limit } from '../limit.ts';
import type { Standard } from '../standard.ts';
import { HANDBOOK_FINAL, handbookGates } from './handbook-gates.ts';

const final = {
  localizer: null,
  glidepath: null,
  /** Row `faa-h-8083-3c`, final: about the recommended speed, or 1.3 VSO. */
  airspeedKt: limit(-5, 10, HANDBOOK_FINAL),
  speedBasis: 'target',
} as const;
const NO_NEEDLES = 'FAA-H-8083-3C gives no limit for the needles';

/** Stability of light aircraft on final; a handbook for flying by eye, so it knows neither needles nor minimums. */
export const LIGHT_AIRCRAFT: Standard = {
  id: 'light-aircraft',
  title: 'Stability for light aircraft',
  source: 'FAA-H-8083-3C, chapter 9 (second-hand)',
  referenceId: 'faa-h-8083-3c',
  beforeFinal: { localizer: null, altitudeFt: null, airspeedKt: null },
  final: { ...final, airspeedAsymmetricKt: null, countsFrom: 'fix' },
  gates: handbookGates(final),
  minimums: null,
  tasks: [
    {
      code: 'Chapter 9',
      title: 'Stabilized approach',
      covered: 'airspeed, sink rate and bank below the gate',
      notSeen: 'configuration, trim, power, checklists, the aiming point, judgement',
    },
  ],
  own: [],
  lacks: {
    'localizer-before-final': NO_NEEDLES,
    'altitude-before-final': 'FAA-H-8083-3C asks nothing before final',
    'localizer-final': NO_NEEDLES,
    'glidepath-final': NO_NEEDLES,
    minimums: 'FAA-H-8083-3C asks nothing at decision altitude',
  },
};
