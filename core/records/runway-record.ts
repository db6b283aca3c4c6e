import type { RecordBearing } from './bearings.ts';
import { decoded, type Decoded } from './columns.ts';

export interface RunwayRecord {
  readonly airport: string;
  /** As records write it: `RW17R`. */
  readonly runway: string;
  /** Of all pavement, from end to end. */
  readonly lengthFt: number;
  readonly bearing: RecordBearing | null;
  /**
   * The LANDING threshold, also where it is displaced: by the published records of six runways, two thresholds lie
   * as far apart as length less both displacements, to 2 ft (see the tests).
   */
  readonly threshold: { readonly latDeg: number; readonly lonDeg: number };
  /** The threshold above the ellipsoid (the field's name is from memory). */
  readonly ellipsoidHeightM: number | null;
  readonly thresholdElevationFt: number | null;
  /** From the beginning of the pavement to the landing threshold. */
  readonly displacedThresholdFt: number;
  readonly crossingHeightFt: number | null;
  /** Where the crossing height is from: I is the glideslope, others are visual or RNAV aids (from memory). */
  readonly crossingHeightFrom: string;
  readonly widthFt: number | null;
  readonly localizer: string;
  readonly category: string;
  readonly record: number | null;
  /** Of this record's last change: it may be decades old, and says nothing of the file's own cycle. */
  readonly changedInCycle: string;
}

/** A "PG" record: columns from two independent readings that agree (second-hand), held to published records. */
export function decodeRunway(line: string): Decoded<RunwayRecord> {
  return decoded(line, (columns) => ({
    airport: columns.name(7, 10),
    runway: columns.name(14, 18),
    lengthFt: columns.needed(23, 27),
    bearing: columns.bearing(28, 31),
    threshold: columns.neededPosition(33),
    ellipsoidHeightM: columns.number(61, 66, 10),
    thresholdElevationFt: columns.number(67, 71),
    displacedThresholdFt: columns.number(72, 75) ?? 0,
    crossingHeightFt: columns.number(76, 77),
    crossingHeightFrom: columns.text(81, 81),
    widthFt: columns.number(78, 80),
    localizer: columns.text(82, 85),
    category: columns.text(86, 86),
    record: columns.number(124, 128),
    changedInCycle: columns.text(129, 132),
  }));
}
