import type { RecordVariation } from './bearings.ts';
import { decoded, type Decoded } from './columns.ts';

export interface AirportRecord {
  readonly ident: string;
  readonly region: string;
  readonly name: string;
  readonly latDeg: number;
  readonly lonDeg: number;
  readonly variation: RecordVariation | null;
  readonly elevationFt: number | null;
}

/** A "PA" record. Columns from two open readings of ARINC 424-18 that agree, held to published records in the tests. */
export function decodeAirport(line: string): Decoded<AirportRecord> {
  return decoded(line, (columns) => ({
    ident: columns.name(7, 10),
    region: columns.text(11, 12),
    name: columns.text(94, 123),
    ...columns.neededPosition(33),
    variation: columns.variation(52, 56),
    elevationFt: columns.number(57, 61),
  }));
}
