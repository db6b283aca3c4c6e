import type { Position } from '../earth/geodesic.ts';
import { decoded, type Columns, type Decoded } from './columns.ts';
import type { RecordKind } from './record-kind.ts';

/** The kinds of records that a leg can name a place by, besides a runway. */
export type FixKind = Extract<
  RecordKind,
  'terminal-waypoint' | 'enroute-waypoint' | 'vhf-navaid' | 'enroute-ndb' | 'terminal-ndb'
>;

export interface FixRecord extends Position {
  readonly ident: string;
  readonly region: string;
  /** Null where the fix belongs to none. */
  readonly airport: string | null;
}

export function isFix(kind: RecordKind): kind is FixKind {
  return FIX_SECTIONS.some(([, fixKind]) => fixKind === kind);
}

/** Section and subsection by which a leg names its fix. */
const FIX_SECTIONS: readonly (readonly [section: string, kind: FixKind])[] = [
  ['PC', 'terminal-waypoint'],
  ['EA', 'enroute-waypoint'],
  ['D', 'vhf-navaid'],
  ['DB', 'enroute-ndb'],
  ['PN', 'terminal-ndb'],
];

/** Null for a section that holds no fixes of this kind: runways, airports. */
export function fixKindOfSection(section: string): FixKind | null {
  return FIX_SECTIONS.find(([known]) => known === section)?.[1] ?? null;
}

/**
 * A waypoint or a navaid, as far as it is a place ("PC", "EA", "D", "DB", "PN" records). Columns from two open readings
 * of ARINC 424-18 that agree, held to published records in the tests; those of terminal NDBs are from memory.
 */
export function decodeFix(line: string, kind: FixKind): Decoded<FixRecord> {
  const isWaypoint = kind === 'terminal-waypoint' || kind === 'enroute-waypoint';
  const hasAirport = kind !== 'enroute-waypoint' && kind !== 'enroute-ndb';
  return decoded(line, (columns) => ({
    ident: columns.name(14, isWaypoint ? 18 : 17),
    region: columns.text(20, 21),
    airport: (hasAirport && columns.text(7, 10)) || null,
    ...placeOf(columns, kind),
  }));
}

/** A VHF navaid without a VOR has the place of its DME only. */
function placeOf(columns: Columns, kind: FixKind): Position {
  if (kind === 'vhf-navaid' && columns.isBlank(33, 51)) return columns.neededPosition(56);
  return columns.neededPosition(33);
}
