import { limit, symmetric, type Provenance } from '../limit.ts';
import type { Standard } from '../standard.ts';

/** Rows `fsf-alar-bn-7-1`, several quotations that agree. */
const NOTE_7_1: Provenance = {
  code: null,
  source: 'FSF ALAR Briefing Note 7.1, stabilized approach',
  status: 'second-hand',
};

/** Printed as one dot, of a two-dot display. */
const needle = symmetric(0.5, NOTE_7_1);
/** Relative to Vref. */
const airspeed = limit(0, 20, NOTE_7_1);
const BELOW_GATE = 'FSF ALAR Briefing Note 7.1 speaks only of the flight below its gate';

/** Flight Safety Foundation: stable by 1,000 ft above the airport in instrument conditions, by 500 ft in visual ones. */
export const STABILIZED_APPROACH: Standard = {
  id: 'stabilized-approach',
  title: 'Stabilized approach',
  source: 'FSF ALAR Briefing Note 7.1 (second-hand)',
  referenceId: 'fsf-alar-bn-7-1',
  beforeFinal: { localizer: null, altitudeFt: null, airspeedKt: null },
  final: {
    localizer: needle,
    glidepath: needle,
    airspeedKt: airspeed,
    speedBasis: 'vref',
    airspeedAsymmetricKt: null,
    countsFrom: 'gate',
  },
  gates: {
    instrumentFt: 1000,
    visualFt: 500,
    datum: 'airport',
    source: 'FSF ALAR Briefing Note 7.1 (second-hand); heights above airport elevation',
    localizer: needle,
    glidepath: needle,
    airspeed,
    speedBasis: 'vref',
    sinkFpm: limit(null, 1000, NOTE_7_1),
    bankDeg: null,
  },
  minimums: null,
  tasks: [
    {
      code: 'Briefing Note 7.1',
      title: 'Elements of a stabilized approach',
      covered: 'both needles, airspeed relative to Vref and sink rate below the gate',
      notSeen:
        'landing configuration, power, briefings, checklists, whether a higher sink rate was briefed, small heading and pitch changes',
    },
  ],
  own: [],
  lacks: {
    'localizer-before-final': BELOW_GATE,
    'altitude-before-final': BELOW_GATE,
    minimums: 'FSF ALAR Briefing Note 7.1 asks nothing at decision altitude',
  },
};
