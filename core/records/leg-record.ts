import type { RecordBearing } from './bearings.ts';
import { decoded, type Decoded } from './columns.ts';

export interface LegRecord {
  readonly airport: string;
  /** `I17R`, `I04LZ`. */
  readonly procedure: string;
  /** I for an ILS; see `isGlideslopeRoute`. */
  readonly routeType: string;
  readonly sequence: number;
  /** Null for a leg that ends at no fix, such as a climb on a course. */
  readonly fix: {
    readonly ident: string;
    readonly region: string;
    /** Section and subsection: `PC`, `EA`, `D`. */
    readonly section: string;
  } | null;
  readonly isFinalApproachFix: boolean;
  readonly isMissedApproachPoint: boolean;
  /** The first leg of the missed approach; all behind it belong to that as well. */
  readonly beginsMissedApproach: boolean;
  /** Two letters: `IF`, `CF`, `HM`. */
  readonly pathTerminator: string;
  readonly navaid: string;
  /** The section of that: `PI` for the localizer. */
  readonly navaidSection: string;
  /** From the navaid, what its DME reads. */
  readonly dmeNm: number | null;
  readonly course: RecordBearing | null;
  /** Null for a leg that is flown for a time, or that gives neither. */
  readonly distanceNm: number | null;
  readonly altitudeDescription: string;
  readonly altitudeFt: number | null;
  /** With a description of G or H the glideslope's altitude at the fix (from memory). */
  readonly secondAltitudeFt: number | null;
  /** Negative down. */
  readonly verticalAngleDeg: number | null;
}

/**
 * Route types of approaches with a localizer and a glideslope: ILS, and the localizer-type directional aid where it has
 * one (X, from memory).
 */
export function isGlideslopeRoute(line: string): boolean {
  return line[19] === 'I' || line[19] === 'X';
}

/**
 * A "PF" record. Columns from two open readings of ARINC 424-18 that agree, held to published records in the tests.
 * The four columns of the waypoint description (5.17): M in the third begins the missed approach; in the fourth F is
 * the final approach fix and M the missed approach point.
 */
export function decodeLeg(line: string): Decoded<LegRecord> {
  return decoded(line, (columns) => ({
    airport: columns.name(7, 10),
    procedure: columns.name(14, 19),
    routeType: columns.text(20, 20),
    sequence: columns.needed(27, 29),
    fix: columns.isBlank(30, 34)
      ? null
      : { ident: columns.text(30, 34), region: columns.text(35, 36), section: columns.text(37, 38) },
    isFinalApproachFix: columns.mark(43) === 'F',
    isMissedApproachPoint: columns.mark(43) === 'M',
    beginsMissedApproach: columns.mark(42) === 'M',
    pathTerminator: columns.text(48, 49),
    navaid: columns.text(51, 54),
    navaidSection: columns.text(79, 80),
    dmeNm: columns.number(67, 70, 10),
    course: columns.bearing(71, 74),
    distanceNm: columns.mark(75) === 'T' ? null : columns.number(75, 78, 10),
    altitudeDescription: columns.text(83, 83),
    altitudeFt: columns.altitudeFt(85, 89),
    secondAltitudeFt: columns.altitudeFt(90, 94),
    verticalAngleDeg: columns.number(103, 106, 100),
  }));
}
