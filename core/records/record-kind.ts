/**
 * What a record is, by the columns that say so: section in column 5, subsection in column 13 at airports and in
 * column 6 elsewhere, of terminal NDBs too. `header` has a form of its own; `other` is a record of a kind that no
 * facility needs; null is no record.
 */
export type RecordKind =
  | 'header'
  | 'airport'
  | 'runway'
  | 'localizer'
  | 'leg'
  | 'terminal-waypoint'
  | 'enroute-waypoint'
  | 'vhf-navaid'
  | 'enroute-ndb'
  | 'terminal-ndb'
  | 'other'
  | null;

const AIRPORT_KINDS: Readonly<Record<string, RecordKind>> = {
  A: 'airport',
  C: 'terminal-waypoint',
  F: 'leg',
  G: 'runway',
  I: 'localizer',
};

/** A record begins with S (standard) or T (tailored), an area in columns 2 to 4, and one of the sections of 424-18. */
const RECORD_START = /^[ST](?:[A-Z0-9]{3}| {3})[ADEHPRTU]/;

/** @param line in capitals */
export function kindOfRecord(line: string): RecordKind {
  if (line.startsWith('HDR')) return 'header';
  if (!RECORD_START.test(line)) return null;
  const section = line[4];
  const inner = line[5] ?? ' ';
  if (section === 'P') return inner === 'N' ? 'terminal-ndb' : (AIRPORT_KINDS[line[12] ?? ' '] ?? 'other');
  if (section === 'E') return inner === 'A' ? 'enroute-waypoint' : 'other';
  if (section !== 'D') return 'other';
  if (inner === 'B') return 'enroute-ndb';
  return inner === ' ' ? 'vhf-navaid' : 'other';
}

/**
 * Whether a record only adds to the one before it: it holds other fields in the same columns. Column 39 of a leg and
 * column 22 of all others that are read here say so: 0 is a record alone, 1 one that others follow (ARINC 424 5.16).
 */
export function isContinuation(line: string, kind: RecordKind): boolean {
  if (kind === 'other') return false;
  const mark = line[kind === 'leg' ? 38 : 21] ?? ' ';
  return mark !== '0' && mark !== '1' && mark !== ' ';
}
