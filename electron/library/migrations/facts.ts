/**
 * Version 4: what progress reads of each approach, copied out of the documents so that 20,000 of them are told of at
 * once. No record: whatever is missing is made from its document when it is asked for. Approaches get a number of this
 * file's own for that, by which they are joined several times as fast as by their debrief.
 */
export const FACTS = `
CREATE TABLE numbered_approaches (
  id INTEGER PRIMARY KEY,
  debrief_id TEXT NOT NULL REFERENCES debriefs (id) ON DELETE CASCADE,
  number INTEGER NOT NULL,
  lesson_id TEXT NOT NULL REFERENCES lessons (id) ON DELETE CASCADE,
  student_id TEXT REFERENCES people (id),
  date TEXT NOT NULL,
  start_utc TEXT NOT NULL,
  facility TEXT NOT NULL,
  standard_id TEXT NOT NULL,
  kind TEXT NOT NULL,
  outcome TEXT NOT NULL,
  level INTEGER,
  level_low INTEGER,
  level_high INTEGER,
  score INTEGER,
  score_low INTEGER,
  score_high INTEGER,
  summary TEXT NOT NULL,
  UNIQUE (debrief_id, number)
) STRICT;
INSERT INTO numbered_approaches SELECT NULL, * FROM approaches;
DROP TABLE approaches;
ALTER TABLE numbered_approaches RENAME TO approaches;
CREATE INDEX approaches_by_date ON approaches (date, start_utc);
CREATE INDEX approaches_of_student ON approaches (student_id, date, start_utc);
CREATE INDEX approaches_of_lesson ON approaches (lesson_id);

CREATE TABLE approach_facts (
  approach_id INTEGER PRIMARY KEY REFERENCES approaches (id) ON DELETE CASCADE,
  log_sha256 TEXT NOT NULL,
  end_utc TEXT NOT NULL,
  -- Of the standard's text: one of one's own may change and keep its id.
  standard_sha256 TEXT NOT NULL,
  engine_version TEXT NOT NULL,
  -- JSON in one: how it was flown, conditions, turbulence, the localizer's full scale in degrees, the kind of log.
  mix TEXT NOT NULL,
  gate_1000 TEXT,
  gate_500 TEXT,
  went_on TEXT NOT NULL
) STRICT;

CREATE TABLE measures (
  approach_id INTEGER NOT NULL REFERENCES approach_facts (approach_id) ON DELETE CASCADE,
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
  PRIMARY KEY (approach_id, criterion)
) STRICT, WITHOUT ROWID;

-- One criterion of everybody, without a look at any other.
CREATE INDEX measures_of_criterion ON measures (criterion, approach_id, verdict, inside_share, rms);
`;
