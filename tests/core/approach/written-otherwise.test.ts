import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { debriefLog, defineFacility } from '../../../core/analyze.ts';
import type { Debrief } from '../../../core/debrief/debrief.ts';
import { METRES_PER_FOOT } from '../../../core/units/units.ts';
import { csvText, type CsvColumn, type CsvLayout } from '../../support/files/csv.ts';
import { englishLayout, epochLayout, germanLayout, unitsRowLayout } from '../../support/files/csv-layouts.ts';
import { EXACT, recordFlight, type LoggedFix } from '../../support/files/logged-fix.ts';
import { germanDate, isoUtc, timeText } from '../../support/files/time-text.ts';
import type { FlightTruth } from '../../support/flight/flight-truth.ts';
import { chunksOf, idle } from '../log/reading.ts';
import { differences, expectAlike, FLIGHTS, foundIn, type Tolerance } from './flight-variants.ts';

async function debriefText(text: string, { plan }: FlightTruth): Promise<Debrief> {
  const defined = defineFacility(JSON.stringify(plan.facility), 'made.json');
  if (!defined.ok) throw new Error('the facility is refused');
  const source = { name: 'flight', sha256: () => '', size: null, chunks: chunksOf(text, 65536) };
  const debrief = await debriefLog(source, defined.value, {}, idle);
  if (!debrief.ok) throw new Error(debrief.refusal.message);
  return debrief.value;
}

/** Units by the name that a header gives them: how many of them a foot, a knot or a foot a minute is. */
const LENGTHS = { ft: 1, m: METRES_PER_FOOT };
const SPEEDS = { kt: 1, 'km/h': 1.852, 'm/s': 1852 / 3600, mph: 1852 / 1609.344 };
const CLIMBS = { 'ft/min': 1, 'm/s': METRES_PER_FOOT / 60 };
const WORDS = {
  english: [
    'Latitude',
    'Longitude',
    'GNSS Altitude MSL',
    'Indicated Altitude',
    'Groundspeed',
    'Indicated Airspeed',
    'Vertical Speed',
  ],
  german: [
    'Breite',
    'Länge',
    'GPS-Höhe',
    'Angezeigte Höhe',
    'Geschwindigkeit über Grund',
    'Angezeigte Fluggeschwindigkeit',
    'Vertikalgeschwindigkeit',
  ],
} as const;

interface Writing {
  readonly words: keyof typeof WORDS;
  readonly length: keyof typeof LENGTHS;
  readonly speed: keyof typeof SPEEDS;
  readonly climb: keyof typeof CLIMBS;
  readonly shape: 'commas' | 'semicolons' | 'decimal comma';
}

const PLAIN: Writing = { words: 'english', length: 'ft', speed: 'kt', climb: 'ft/min', shape: 'commas' };
/** Nothing below this many decimals can be told from the flight itself. */
const DECIMALS = 7;

function layoutOf({ words, length, speed, climb, shape }: Writing): CsvLayout {
  const point = shape === 'decimal comma' ? ',' : '.';
  const columns = (
    [
      ['deg', 1, (fix) => fix.latDeg],
      ['deg', 1, (fix) => fix.lonDeg],
      [length, LENGTHS[length], (fix) => fix.gnssAltitudeFt],
      [length, LENGTHS[length], (fix) => fix.indicatedAltitudeFt],
      [speed, SPEEDS[speed], (fix) => fix.groundspeedKt],
      [speed, SPEEDS[speed], (fix) => fix.airspeedIndicatedKt],
      [climb, CLIMBS[climb], (fix) => fix.verticalSpeedFpm],
    ] satisfies [string, number, (fix: LoggedFix) => number][]
  ).map(([unit, factor, value], i): CsvColumn => {
    const decimals = unit === 'deg' ? DECIMALS + 2 : DECIMALS;
    return {
      header: `${WORDS[words][i]!} [${unit}]`,
      cell: (fix) => (value(fix) * factor).toFixed(decimals).replace('.', point),
    };
  });
  const time: readonly CsvColumn[] =
    words === 'german'
      ? [
          { header: 'Datum', cell: (fix) => germanDate(fix.timeS) },
          { header: 'Uhrzeit (UTC)', cell: (fix) => timeText(fix.timeS) },
        ]
      : [{ header: 'Time (UTC)', cell: (fix) => isoUtc(fix.timeS, 0) }];
  return { delimiter: shape === 'commas' ? ',' : ';', columns: [...time, ...columns] };
}

const keysOf = <K extends string>(from: Record<K, unknown>) => fc.constantFrom(...(Object.keys(from) as K[]));
const writings = fc.record<Writing>({
  words: keysOf(WORDS),
  length: keysOf(LENGTHS),
  speed: keysOf(SPEEDS),
  climb: keysOf(CLIMBS),
  shape: fc.constantFrom('commas', 'semicolons', 'decimal comma'),
});
const ROUNDED: Tolerance = { number: (_path, size) => 1e-5 * size, seconds: () => 0.0011 };

const recorded = (truth: FlightTruth) => recordFlight(truth, { ...EXACT, rateHz: 1 });
const truthOf = (wanted: string) => FLIGHTS.find(({ name }) => name === wanted)!.truth();

describe.each(['a landing', 'a missed approach'])('%s', (name) => {
  it('is the same in whatever units, words and signs the file is written', async () => {
    const truth = truthOf(name);
    const fixes = recorded(truth);
    const plain = await debriefText(csvText(layoutOf(PLAIN), fixes), truth);
    expect(plain.approaches[0]!.segments.every(({ airspeed }) => airspeed !== null)).toBe(true);
    await fc.assert(
      fc.asyncProperty(writings, async (writing) => {
        const other = await debriefText(csvText(layoutOf(writing), fixes), truth);
        expect(differences(foundIn(plain), foundIn(other), ROUNDED)).toEqual([]);
      }),
      {
        numRuns: 6,
        examples: [
          [{ words: 'german', length: 'm', speed: 'km/h', climb: 'm/s', shape: 'decimal comma' }],
          [{ words: 'english', length: 'm', speed: 'm/s', climb: 'ft/min', shape: 'semicolons' }],
          [{ words: 'english', length: 'ft', speed: 'mph', climb: 'm/s', shape: 'commas' }],
        ],
      },
    );
  });

  it('is alike from every recorder, as far as each one rounds', async () => {
    const truth = truthOf(name);
    const fixes = recorded(truth);
    const approachesOf = async (layout: CsvLayout) =>
      (await debriefText(csvText(layout, fixes), truth)).approaches;
    const plain = await approachesOf(layoutOf(PLAIN));
    for (const layout of [englishLayout(), germanLayout(), unitsRowLayout(['a remark'], 60)])
      expectAlike(plain, await approachesOf(layout));
    // Without an altimeter the receiver's height decides, which on a cold day is another.
    const { columns, ...rest } = layoutOf(PLAIN);
    const noAltimeter = { ...rest, columns: columns.filter(({ header }) => !/Indicated Alt/.test(header)) };
    expectAlike(await approachesOf(noAltimeter), await approachesOf(epochLayout()));
  });
});
