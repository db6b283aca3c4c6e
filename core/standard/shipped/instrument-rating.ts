import { limit, symmetric, type Provenance } from '../limit.ts';
import type { Standard } from '../standard.ts';
import { handbookGates } from './handbook-gates.ts';

/** Rows `faa-s-acs-8c`, IR.VI.B: before final segment (S9), and from the fix to decision altitude (S12). */
const SOURCE = 'FAA-S-ACS-8C, IR.VI.B precision approach';
const S9: Provenance = { code: 'IR.VI.B.S9', source: SOURCE, status: 'published' };
const S12: Provenance = { code: 'IR.VI.B.S12', source: SOURCE, status: 'published' };
/** S13 (published) asks for an action and gives no band: how long it may take is ours. */
const S13: Provenance = {
  code: 'IR.VI.B.S13',
  source: `${SOURCE}: a missed approach at decision altitude without the required visual references; 3 s are our own choice`,
  status: 'own choice',
};

const final = {
  localizer: symmetric(0.75, S12),
  glidepath: symmetric(0.75, S12),
  airspeedKt: symmetric(10, S12),
  speedBasis: 'target',
} as const;

/** FAA instrument rating, Airman Certification Standards, ILS flown as a precision approach. */
export const INSTRUMENT_RATING: Standard = {
  id: 'instrument-rating',
  title: 'Instrument rating, precision approach',
  source: 'FAA-S-ACS-8C, IR.VI.B',
  referenceId: 'faa-s-acs-8c',
  beforeFinal: {
    localizer: symmetric(0.75, S9),
    altitudeFt: symmetric(100, S9),
    airspeedKt: symmetric(10, S9),
  },
  final: { ...final, airspeedAsymmetricKt: null, countsFrom: 'fix' },
  gates: handbookGates(final),
  minimums: { kind: 'start-within-time', seconds: 3, limit: limit(null, 3, S13) },
  tasks: [
    {
      code: 'IR.VI.B',
      title: 'Precision approach',
      covered:
        'localizer, altitude and airspeed before final (S9, in part), both needles and airspeed from the final approach fix to decision altitude (S12), the missed approach at decision altitude (S13, in part)',
      notSeen:
        'briefing, checklists, radio work, setting up and identifying the aids, assigned headings, configuration, judgement, and how the runway was reached by eye',
    },
  ],
  own: [],
};
