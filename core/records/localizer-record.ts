import type { Position } from '../earth/geodesic.ts';
import type { RecordBearing, RecordVariation } from './bearings.ts';
import { decoded, type Decoded } from './columns.ts';

export interface LocalizerRecord {
  readonly airport: string;
  readonly ident: string;
  /** See `localizerKind`. */
  readonly category: string;
  readonly frequencyMHz: number;
  /** As records write it: `RW17R`. */
  readonly runway: string;
  readonly antenna: Position;
  /** Inbound. */
  readonly bearing: RecordBearing | null;
  /** Null where there is no glideslope. */
  readonly glidepathAntenna: Position | null;
  /** From an end of the runway; which end, says the reference: blank or @ the stop end, + the approach end, − abeam. */
  readonly antennaPositionFt: number | null;
  readonly antennaPositionReference: string;
  /** From the landing threshold. */
  readonly glidepathPositionFt: number | null;
  /** From full left to full right. */
  readonly courseWidthDeg: number | null;
  readonly glidepathAngleDeg: number | null;
  /** What the bearing is magnetic by. */
  readonly variation: RecordVariation | null;
  readonly crossingHeightFt: number | null;
  readonly glidepathElevationFt: number | null;
  readonly record: number | null;
  /** Of this record's last change: it may be decades old, and says nothing of the file's own cycle. */
  readonly changedInCycle: string;
}

/** A "PI" record: columns from two independent readings that agree (second-hand), held to published records. */
export function decodeLocalizer(line: string): Decoded<LocalizerRecord> {
  return decoded(line, (columns) => ({
    airport: columns.name(7, 10),
    ident: columns.name(14, 17),
    category: columns.text(18, 18),
    frequencyMHz: columns.needed(23, 27, 100),
    runway: columns.text(28, 32),
    antenna: columns.neededPosition(33),
    bearing: columns.bearing(52, 55),
    glidepathAntenna: columns.position(56),
    antennaPositionFt: columns.number(75, 78),
    antennaPositionReference: columns.mark(79),
    glidepathPositionFt: columns.number(80, 83),
    courseWidthDeg: columns.number(84, 87, 100),
    glidepathAngleDeg: columns.number(88, 90, 100),
    variation: columns.variation(91, 95),
    crossingHeightFt: columns.number(96, 97),
    glidepathElevationFt: columns.number(98, 102),
    record: columns.number(124, 128),
    changedInCycle: columns.text(129, 132),
  }));
}

/** Whether a record has a glideslope that a facility can be made of. */
export function hasGlideslope({ glidepathAntenna, glidepathAngleDeg }: LocalizerRecord): boolean {
  return glidepathAntenna !== null && glidepathAngleDeg !== null && glidepathAngleDeg > 0;
}

/** What the category stands for (ARINC 424 5.80; from memory): how such an approach is called. */
const KINDS: Readonly<Record<string, string>> = { I: 'IGS', L: 'LDA', A: 'LDA', S: 'SDF', F: 'SDF' };

/** "ILS", "LOC", "LDA", "SDF" or "IGS". */
export function localizerKind(localizer: LocalizerRecord): string {
  return KINDS[localizer.category] ?? (hasGlideslope(localizer) ? 'ILS' : 'LOC');
}
