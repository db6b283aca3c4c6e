import { limit, symmetric, type Provenance } from '../limit.ts';
import type { Standard } from '../standard.ts';
import { handbookGates } from './handbook-gates.ts';

/** Rows `part-fcl-appendix-7`: general, final (LPV, ILS, MLS, GLS), and starting the go-around at decision height. */
const PAR_11: Provenance = {
  code: null,
  source: 'Part-FCL Appendix 7, paragraph 11, (EU) 1178/2011 Annex I',
  status: 'published',
};

const final = {
  localizer: symmetric(0.5, PAR_11),
  glidepath: symmetric(0.5, PAR_11),
  airspeedKt: symmetric(5, PAR_11),
  speedBasis: 'target',
} as const;

/** European instrument rating skill test. Height and speed are the general tolerances, which hold on final too. */
export const SKILL_TEST: Standard = {
  id: 'skill-test',
  title: 'Instrument rating skill test, ILS',
  source: 'Part-FCL Appendix 7, (EU) 1178/2011',
  referenceId: 'part-fcl-appendix-7',
  beforeFinal: {
    localizer: null,
    altitudeFt: symmetric(100, PAR_11),
    airspeedKt: symmetric(5, PAR_11),
  },
  final: { ...final, airspeedAsymmetricKt: limit(-5, 10, PAR_11), countsFrom: 'fix' },
  gates: handbookGates(final),
  minimums: { kind: 'start-within-height', limit: limit(0, 50, PAR_11) },
  tasks: [
    {
      code: 'Appendix 7, paragraph 11',
      title: 'Flight test tolerances on an ILS',
      covered:
        'height and speed, both needles on final, the height at which a go-around at decision height was started',
      notSeen:
        'briefing, checklists, radio work, setting up and identifying the aids, headings and tracks, configuration, smoothness, judgement',
    },
  ],
  own: [],
  lacks: {
    'localizer-before-final':
      'before final Part-FCL Appendix 7 gives tracking in degrees of a radio aid, ±5, and no limit for the needle',
  },
};
