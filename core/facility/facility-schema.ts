import * as z from 'zod/mini';
import { format, group, listOf, number, words, wordsLike, wrongType } from '../json/schema-values.ts';
import { bearing, elevation, place, placeOfUnknownHeight } from './schema-values.ts';

export const FACILITY_FORMAT = 'halfdot-facility/1';

/** Landing lengths that can have an ILS, by far; feet. */
export const RUNWAY_LENGTH_FT = { min: 1000, max: 20000 } as const;
export const MAX_ANTENNA_SETBACK_FT = 6000;

/**
 * A facility file. Positions WGS84 degrees, heights feet above mean sea level, variation east positive.
 * The ranges are those of what can exist at all (our own choice unless a source stands beside): they catch
 * slips of the pen. What may be right but looks odd is asked about in `contradictions.ts`.
 */
export const facilitySchema = () =>
  group('a facility', {
    format: format(FACILITY_FORMAT),
    name: words('a name', 100),
    ident: z.optional(words('an ident', 8)),
    /** ICAO Annex 10 Vol I 3.1.3.2.1: the band 108 to 111.975 MHz (from memory). */
    frequencyMHz: z.optional(number('a localizer frequency', 108, 111.975, 'MHz')),
    airportElevationFt: z.optional(elevation()),
    runway: group('a runway', {
      designator: wordsLike(
        'a runway designator',
        /^(0?[1-9]|[12]\d|3[0-6])[LCR]?T?$/,
        'is 01 to 36, with L, C or R where runways are parallel',
      ),
      /** The landing threshold. */
      threshold: place('a threshold'),
      farEnd: z.optional(placeOfUnknownHeight('a far end')),
      trueBearingDeg: z.optional(bearing('a true bearing')),
      lengthFt: z.optional(number('a runway length', RUNWAY_LENGTH_FT.min, RUNWAY_LENGTH_FT.max, 'ft')),
      widthFt: z.optional(number('a runway width', 20, 500, 'ft')),
      touchdownZoneElevationFt: z.optional(elevation()),
    }),
    localizer: z.optional(
      group('a localizer', {
        courseTrueDeg: z.optional(bearing('a true course')),
        courseMagneticDeg: z.optional(bearing('a magnetic course')),
        antenna: z.optional(placeOfUnknownHeight('a localizer antenna')),
        antennaSetbackFt: z.optional(number('an antenna setback', 0, MAX_ANTENNA_SETBACK_FT, 'ft')),
        /** From full left to full right. */
        courseWidthDeg: z.optional(number('a course width (full left to full right)', 1, 12, 'degrees')),
      }),
    ),
    glidepath: group('a glidepath (localizer-only approaches are not supported yet)', {
      angleDeg: number('a glidepath angle', 1.5, 10, 'degrees'),
      thresholdCrossingHeightFt: number('a threshold crossing height', 20, 150, 'ft'),
      antenna: z.optional(place('a glidepath antenna')),
      /** From on path to full up, or to full down. */
      fullScaleDeg: z.optional(number('a glidepath full scale (one side)', 0.1, 2.5, 'degrees')),
    }),
    minimums: z.optional(
      group('minimums', {
        decisionAltitudeFt: z.optional(number('a decision altitude', -1500, 20000, 'ft')),
        rvrFt: z.optional(number('a runway visual range', 0, 10000, 'ft')),
      }),
    ),
    finalApproachFix: z.optional(
      group('a fix', {
        name: z.optional(words('a fix name', 20)),
        /** To the threshold, not to a DME. */
        distanceNm: z.optional(number('a distance to the threshold', 0.5, 25, 'NM')),
        altitudeFt: z.optional(number('a fix altitude', -1500, 30000, 'ft')),
        dmeNm: z.optional(number('a DME reading', 0, 60, 'NM')),
      }),
    ),
    missedApproach: z.optional(
      group('a missed approach', {
        climbToFt: z.optional(number('an altitude to climb to', -1500, 30000, 'ft')),
        instructions: z.optional(words('the instructions', 2000)),
      }),
    ),
    magneticVariationDeg: z.optional(number('a magnetic variation', -180, 180, 'degrees')),
    origin: z.optional(origin()),
  });

/** Where values come from that nobody typed. Not among the design's keys: whoever reads the file has to know it. */
const origin = () =>
  group('an origin', {
    /** In words, by the path of the value: `runway.threshold.latDeg`. */
    sources: z.optional(
      z.record(z.string(), words('a source', 200), { error: wrongType('sources', 'a group in braces') }),
    ),
    /** Of the official records that some of them are of, the AIRAC cycle: `2609`. */
    cycle: z.optional(
      wordsLike('an AIRAC cycle', /^\d{4}$/, 'is four digits, as 2609: year and number in the year'),
    ),
    /** Of a draft from a landing: in which log that was, and the paths of the values that nobody has confirmed. */
    landing: z.optional(
      group('a landing', {
        logSha256: wordsLike('a log’s SHA-256', /^[0-9a-f]{64}$/, 'is 64 digits of 0-9 and a-f'),
        unconfirmed: listOf('unconfirmed values', words('a path', 100), 100),
      }),
    ),
  });

/** A checked facility file, still as the user wrote it; `deriveGeometry` fills in what it leaves out. */
export type Facility = z.infer<ReturnType<typeof facilitySchema>>;
