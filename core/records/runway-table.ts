import type { Position } from '../earth/geodesic.ts';

/** One end of a row of the table, as the row has it; null where it says nothing that can be. */
export interface RunwayEnd {
  /** As the table writes it: "07", "7", "H1"; empty where it names none. */
  readonly ident: string;
  /** The middle of the end of the pavement, not the displaced threshold. */
  readonly position: Position | null;
  readonly elevationFt: number | null;
  readonly headingTrueDeg: number | null;
  /** From the end of the pavement to the landing threshold; 0 where the row names none, null where it names no number. */
  readonly displacedThresholdFt: number | null;
}

/** One runway of the open airports dataset, open and with the position of one end at least. */
export interface RunwayRow {
  /** Line of the file, counted from 1. */
  readonly line: number;
  readonly airportIdent: string;
  /** The whole pavement, what lies before displaced thresholds with it. */
  readonly lengthFt: number | null;
  readonly widthFt: number | null;
  readonly surface: string;
  /** How finely its positions are written: half of their last decimal, degrees. */
  readonly halfStepDeg: number;
  /** Its lower-numbered end and the other. */
  readonly low: RunwayEnd;
  readonly high: RunwayEnd;
}

/** What was found in a table of runways. */
export interface RunwayTable {
  /** Rows of data seen, also those left out. */
  readonly rowsSeen: number;
  /** Every airport with a runway of which something can be drafted, in the order of the file. */
  readonly airports: readonly string[];
  /** Those of the airport that was asked for. */
  readonly runways: readonly RunwayRow[];
}
