/**
 * Version 4: what progress reads of each approach, copied out of the documents so that 20,000 of them are told of at
 * once. No record: whatever is missing is made from its document when it is asked for.
 */
export const FACTS = `
CREATE TABLE approach_facts (
  debrief_id TEXT NOT NULL,
  number INTEGER NOT NULL,
  log_sha256 TEXT NOT NULL,
  end_utc TEXT NOT NULL,
  -- Of the standard's text: one of one's own may change and keep its id.
  standard_sha256 TEXT NOT NULL,
  engine_version TEXT NOT NULL,
  -- JSON in one: how it was flown, conditions, turbulence, the localizer's full scale in degrees, the kind of log.
  mix TEXT NOT NULL,
  gate_1000 TEXT,
  gate_500 TEXT,
  went_on TEXT NOT NULL,
  PRIMARY KEY (debrief_id, number),
  FOREIGN KEY (debrief_id, number) REFERENCES approaches (debrief_id, number) ON DELETE CASCADE
) STRICT, WITHOUT ROWID;

CREATE TABLE measures (
  debrief_id TEXT NOT NULL,
  number INTEGER NOT NULL,
  criterion TEXT NOT NULL,
  -- Among the criteria of its debrief.
  place INTEGER NOT NULL,
  title TEXT NOT NULL,
  verdict TEXT NOT NULL,
  -- Of the distance flown where it counted.
  inside_share REAL,
  why_no_share TEXT,
  rms REAL,
  why_no_rms TEXT,
  PRIMARY KEY (debrief_id, number, criterion),
  FOREIGN KEY (debrief_id, number) REFERENCES approach_facts (debrief_id, number) ON DELETE CASCADE
) STRICT, WITHOUT ROWID;

-- One criterion of everybody, without a look at any other.
CREATE INDEX measures_of_criterion ON measures (criterion, debrief_id, number, verdict, inside_share, rms);
`;
