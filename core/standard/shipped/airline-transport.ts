import { limit, symmetric, type Provenance } from '../limit.ts';
import type { Standard } from '../standard.ts';
import { handbookGates } from './handbook-gates.ts';

/** Rows `faa-s-acs-11a`, AA.VI.E: before final segment (S9), and from the fix to decision altitude (S12). */
const SOURCE = 'FAA-S-ACS-11A (edition letter from memory), AA.VI.E precision approach';
const S9: Provenance = { code: 'AA.VI.E.S9', source: SOURCE, status: 'published' };
const S12: Provenance = { code: 'AA.VI.E.S12', source: SOURCE, status: 'published' };
/** The standard (published) asks for an action and gives no band: how long it may take is ours. */
const MISSED: Provenance = {
  code: null,
  source: `${SOURCE}: a missed approach at decision altitude when the references are not distinctly visible; 3 s are our own choice`,
  status: 'own choice',
};

const final = {
  localizer: symmetric(0.25, S12),
  glidepath: symmetric(0.25, S12),
  airspeedKt: symmetric(5, S12),
  speedBasis: 'target',
} as const;

/** FAA airline transport pilot, Airman Certification Standards, ILS flown as a precision approach. */
export const AIRLINE_TRANSPORT: Standard = {
  id: 'airline-transport',
  title: 'Airline transport pilot, precision approach',
  source: 'FAA-S-ACS-11A, AA.VI.E',
  referenceId: 'faa-s-acs-11a',
  beforeFinal: {
    localizer: null,
    altitudeFt: symmetric(100, S9),
    airspeedKt: symmetric(10, S9),
  },
  final: { ...final, airspeedAsymmetricKt: null, countsFrom: 'fix' },
  gates: handbookGates(final),
  minimums: { kind: 'start-within-time', seconds: 3, limit: limit(null, 3, MISSED) },
  tasks: [
    {
      code: 'AA.VI.E',
      title: 'Precision approach',
      covered:
        'altitude and airspeed before final (S9, in part), both needles and airspeed from the final approach fix to decision altitude (S12), the missed approach at decision altitude (in part)',
      notSeen:
        'briefing, checklists, radio work, setting up and identifying the aids, assigned headings, configuration, automation, work as a crew, judgement, and how the runway was reached by eye',
    },
  ],
  own: [],
  lacks: {
    'localizer-before-final':
      'no limit for the localizer before final is known from FAA-S-ACS-11A, only one for the heading',
  },
};
