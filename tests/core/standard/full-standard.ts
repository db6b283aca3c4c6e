import { parseStandard } from '../../../core/standard/parse-standard.ts';
import type { Standard } from '../../../core/standard/standard.ts';

/** A standard file with every key of the format, and no value that a shipped standard has. */
export const FULL = {
  format: 'halfdot-standard/1',
  id: 'club-2',
  title: 'Club standard',
  source: 'Club handbook, section 4',
  basedOn: 'skill-test',
  beforeFinal: { localizerFullScale: 0.8, altitudeFt: { lower: -50, upper: 150 }, airspeedKt: 12 },
  final: {
    localizerFullScale: 0.6,
    glidepathFullScale: { lower: -0.4, upper: 0.7 },
    airspeedKt: { lower: 0, upper: 15 },
    airspeedBasis: 'vref',
    airspeedAsymmetricKt: { lower: 0, upper: 25 },
    countsFrom: 'gate',
  },
  gates: {
    datum: 'threshold',
    localizerFullScale: 0.55,
    glidepathFullScale: { lower: -0.35 },
    airspeedKt: 7,
    airspeedBasis: 'target',
    sinkFpm: 900,
    bankDeg: 12,
  },
  minimums: { startWithinFt: { lower: -10, upper: 40 } },
  own: [
    {
      id: 'bank',
      title: 'Bank on final',
      quantity: 'bankDeg',
      lower: -8,
      upper: 9,
      source: 'Chief instructor',
    },
    { id: 'groundspeed', title: 'Groundspeed', quantity: 'groundspeedKt', upper: 130 },
  ],
};

/** The least that a standard file needs. */
export const LEAST = { format: 'halfdot-standard/1', id: 'least', title: 'Least', source: 'Nobody' };

export const parse = (values: unknown) => parseStandard(JSON.stringify(values, null, 2), 's.json');

/** A standard of these values, which must be usable. */
export function standardOf(values: unknown): Standard {
  const parsed = parse(values);
  if (!parsed.ok) throw new Error(parsed.refusal.message);
  return parsed.value;
}
