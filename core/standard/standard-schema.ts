import * as z from 'zod/mini';
import { format, group, listOf, number, oneOf, words, wordsLike } from '../json/schema-values.ts';
import { band, needleBand } from './limit-schema.ts';
import { SHIPPED } from './standards.ts';

export const STANDARD_FORMAT = 'halfdot-standard/1';

const airspeed = () => z.optional(band('an airspeed limit', { max: 50, unit: 'kt' }));
const basis = () => z.optional(oneOf('an airspeed basis', ['target', 'vref']));
const localizer = () => z.optional(needleBand('a localizer limit'));
const glidepath = () => z.optional(needleBand('a glidepath limit'));
const id = () =>
  wordsLike(
    'an id',
    /^(?=.{1,40}$)[a-z0-9]+(-[a-z0-9]+)*$/,
    'is lower-case letters and digits with hyphens between, at most 40 characters',
  );

const gates = () =>
  group('the limits at the gates', {
    datum: z.optional(oneOf('a datum', ['airport', 'touchdown-zone', 'threshold'])),
    localizerFullScale: localizer(),
    glidepathFullScale: glidepath(),
    airspeedKt: airspeed(),
    airspeedBasis: basis(),
    sinkFpm: z.optional(number('a sink rate (positive down)', 100, 3000, 'ft/min')),
    bankDeg: z.optional(number('a bank to either side', 1, 60, 'degrees')),
  });

/**
 * A user's own standard. Needle limits are fractions of full scale, the others are relative to their target, sink
 * rate and bank absolute. The ranges are those of what can be meant at all (our own choice).
 */
export const standardSchema = () =>
  group('a standard', {
    format: format(STANDARD_FORMAT),
    id: id(),
    title: words('a title', 100),
    source: words('a source', 200),
    /** A shipped standard whose values hold where this one gives none. */
    basedOn: z.optional(
      oneOf(
        'a standard to build on',
        SHIPPED.map((standard) => standard.id),
      ),
    ),
    beforeFinal: z.optional(
      group('the limits before final', {
        localizerFullScale: localizer(),
        altitudeFt: z.optional(band('an altitude limit', { max: 1000, unit: 'ft' })),
        airspeedKt: airspeed(),
      }),
    ),
    final: z.optional(
      group('the limits on final', {
        localizerFullScale: localizer(),
        glidepathFullScale: glidepath(),
        airspeedKt: airspeed(),
        airspeedBasis: basis(),
        airspeedAsymmetricKt: airspeed(),
        countsFrom: z.optional(oneOf('where final counts from', ['fix', 'gate'])),
      }),
    ),
    gates: z.optional(gates()),
    minimums: z.optional(
      group('the limit at minimums', {
        /** Above decision altitude, where the missed approach starts; one number is from 0 up to it. */
        startWithinFt: z.optional(
          band('a height above decision altitude', { max: 500, unit: 'ft' }, (upper) => ({
            lower: 0,
            upper,
          })),
        ),
        startWithinS: z.optional(number('a time to start the missed approach in', 0, 30, 's')),
      }),
    ),
    own: z.optional(
      listOf(
        'own criteria',
        group('an own criterion', {
          id: id(),
          title: words('a title', 100),
          quantity: oneOf('a quantity', ['groundspeedKt', 'verticalSpeedFpm', 'bankDeg', 'pitchDeg']),
          lower: z.optional(number('a lower bound', -10_000, 10_000)),
          upper: z.optional(number('an upper bound', -10_000, 10_000)),
          source: z.optional(words('a source', 200)),
        }),
        20,
      ),
    ),
  });

/** A checked standard file, still as the user wrote it; `completeStandard` fills in what it leaves out. */
export type StandardFile = z.infer<ReturnType<typeof standardSchema>>;
