import type { Issue } from '../issue/issue.ts';

export const RECORDS_FORMAT = 'halfdot-records/1';

/** A record that could not be read: where it stands, and why. */
export interface UnreadableRecord {
  /** Counted from 1. */
  readonly line: number;
  readonly why: string;
}

/** The records of one airport that facilities are made of, as lines of the file in capitals, trailing blanks cut. */
export interface AirportLines {
  readonly ident: string;
  /** Null where the file has no record of the airport itself. */
  readonly airport: string | null;
  readonly localizers: readonly string[];
  readonly runways: readonly string[];
  /** Of approaches with a localizer and a glideslope; finals and missed approaches, without transitions. */
  readonly legs: readonly string[];
  /** Waypoints and navaids that those legs end at, wherever in the file they stood; and the localizers' own DMEs. */
  readonly fixes: readonly string[];
}

/**
 * What a file of official records holds for making facilities of: plain JSON, a few megabytes for a whole country.
 * Airports whose localizers all lack a glideslope are listed, with nothing but those, so that nobody looks for them in
 * vain.
 */
export interface RecordsIndex {
  readonly format: typeof RECORDS_FORMAT;
  /** The file's own cycle, as `2609`; null where no header tells it. */
  readonly cycle: string | null;
  /** ISO date: what the header says, else when the cycle begins; null where neither is known. */
  readonly effectiveDay: string | null;
  readonly recordsRead: number;
  /** Records that only add to the one before them: passed over, since nothing in them is needed. */
  readonly continuations: number;
  /** How many could not be read... */
  readonly recordsUnreadable: number;
  /** ... and the first of them. */
  readonly unreadable: readonly UnreadableRecord[];
  /** By ident. */
  readonly airports: readonly AirportLines[];
  readonly issues: readonly Issue[];
}
