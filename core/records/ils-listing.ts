import { decodeAirport } from './airport-record.ts';
import type { RecordBearing } from './bearings.ts';
import { decodeLocalizer, hasGlideslope, localizerKind } from './localizer-record.ts';
import type { AirportLines, RecordsIndex } from './records-index.ts';
import { designatorOf } from './runway-names.ts';

/** One localizer, as a chooser lists it. */
export interface ListedIls {
  readonly airport: string;
  /** Empty where no record names the airport. */
  readonly airportName: string;
  /** As `17R`. */
  readonly runway: string;
  readonly localizer: string;
  /** "ILS", "LOC", "LDA", "SDF" or "IGS". */
  readonly kind: string;
  /** 1 to 3 for an ILS; the record's own letter otherwise. */
  readonly category: string;
  readonly course: RecordBearing | null;
  readonly frequencyMHz: number;
  /** False: no facility can be made of it, since localizer-only approaches are not supported. */
  readonly hasGlideslope: boolean;
}

/** Every localizer of an index, by airport and runway. */
export function ilsIn(index: Pick<RecordsIndex, 'airports'>): ListedIls[] {
  return index.airports.flatMap((airport) => {
    const airportName = nameOf(airport);
    const listed = airport.localizers.flatMap((line) => listedOf(line, airport.ident, airportName));
    return listed.toSorted((a, b) => (a.runway < b.runway ? -1 : a.runway > b.runway ? 1 : 0));
  });
}

/** Those in which each word of a text stands: in the airport's ident or name, the runway or the localizer's ident. */
export function findIls(listed: readonly ListedIls[], text: string): ListedIls[] {
  const words = text
    .toUpperCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  return listed.filter(({ airport, airportName, runway, localizer }) => {
    const told = `${airport} ${airportName} ${runway} ${localizer}`.toUpperCase();
    return words.every((word) => told.includes(word));
  });
}

function nameOf({ airport }: AirportLines): string {
  const record = airport === null ? null : decodeAirport(airport);
  return record?.ok ? record.value.name : '';
}

function listedOf(line: string, airport: string, airportName: string): ListedIls[] {
  const record = decodeLocalizer(line);
  if (!record.ok) return [];
  const { ident, category, runway, bearing, frequencyMHz } = record.value;
  return [
    {
      airport,
      airportName,
      runway: designatorOf(runway),
      localizer: ident,
      kind: localizerKind(record.value),
      category,
      course: bearing,
      frequencyMHz,
      hasGlideslope: hasGlideslope(record.value),
    },
  ];
}
