import { placeAlong } from '../flight/beam-truth.ts';
import { PETRELHOLM } from '../samples/petrelholm.ts';
import { WHIMBRELNESS } from '../samples/whimbrelness.ts';
import { aerodromeRecords, recordsElsewhere } from './aerodrome-records.ts';
import type { Aerodrome } from './aerodrome.ts';
import { writtenRecord } from './written-record.ts';

/** In force from 19 February to 18 March 2026, when the first sample was flown. */
const CYCLE = '2602';

const DOTTEREL_THRESHOLD = { latDeg: -35.1, lonDeg: -20.3, elevationFt: 61 };

/** Three invented aerodromes: one as plain as can be, one with an offset localizer, one without a glideslope. */
const AERODROMES: readonly Aerodrome[] = [
  {
    ident: 'XPEH',
    name: 'Petrelholm',
    facility: PETRELHOLM,
    hasGlideslope: true,
    displacedFt: { here: 0, opposite: 0 },
    hasDme: true,
    holdFix: { name: 'WIMBO', latDeg: -31.05, lonDeg: -16.45 },
  },
  {
    ident: 'XWHN',
    name: 'Whimbrelness',
    facility: WHIMBRELNESS,
    hasGlideslope: true,
    displacedFt: { here: 0, opposite: 250 },
    hasDme: false,
    holdFix: { name: 'TERNA', latDeg: -28.32, lonDeg: 87.7 },
  },
  {
    ident: 'XDOS',
    name: 'Dotterel Skerry',
    facility: {
      ...PETRELHOLM,
      name: 'Dotterel Skerry LOC 22',
      ident: 'IZDS',
      frequencyMHz: 109.35,
      airportElevationFt: 61,
      runway: {
        ...PETRELHOLM.runway,
        designator: '22',
        threshold: DOTTEREL_THRESHOLD,
        farEnd: { ...placeAlong(DOTTEREL_THRESHOLD, 199, 4200), elevationFt: 52 },
      },
      finalApproachFix: { name: 'SKERA', distanceNm: 5, altitudeFt: 1600 },
      magneticVariationDeg: -21.2,
    },
    hasGlideslope: false,
    displacedFt: { here: 0, opposite: 0 },
    hasDme: false,
    holdFix: { name: 'LIMPO', latDeg: -35.2, lonDeg: -20.2 },
  },
];

/**
 * Official records of an invented region, in the form of ARINC 424-18: what `samples/records.txt` holds. Lines as files
 * have them: headers, navaids, waypoints, then airport by airport.
 */
export function regionRecords(aerodromes: readonly Aerodrome[] = AERODROMES): string {
  const elsewhere = aerodromes.map(recordsElsewhere);
  const fields = [
    ...elsewhere.flatMap(({ navaids }) => navaids),
    ...elsewhere.flatMap(({ waypoints }) => waypoints),
    ...aerodromes.toSorted((a, b) => (a.ident < b.ident ? -1 : 1)).flatMap(aerodromeRecords),
  ];
  const records = fields.map((record, at) => writtenRecord(record, at + 1, CYCLE));
  const count = String(records.length).padStart(7, '0');
  const headers = [
    `HDR01INVENTED       001T0132${count}${CYCLE}  02-FEB-202612:00:00  NOBODY: INVENTED`,
    `HDR04${' '.repeat(33)}INVENTED RECORDS VOLUME ${CYCLE}  EFFECTIVE 19 FEB 2026`,
  ];
  return `${[...headers.map((line) => line.padEnd(132)), ...records].join('\n')}\n`;
}
