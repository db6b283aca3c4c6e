/**
 * Version 1: who flew what where, and what was made of it. Ids are random, so that two libraries can be put together;
 * logs and facilities go by the hash of their content. Times are ISO 8601 in UTC, dates its first ten characters.
 */
export const RECORD = `
CREATE TABLE people (
  id TEXT PRIMARY KEY,
  role TEXT NOT NULL CHECK (role IN ('student', 'instructor')),
  name TEXT NOT NULL COLLATE NOCASE CHECK (trim(name) <> ''),
  added_utc TEXT NOT NULL,
  UNIQUE (role, name)
) STRICT;

CREATE TABLE lessons (
  id TEXT PRIMARY KEY,
  student_id TEXT REFERENCES people (id),
  instructor_id TEXT REFERENCES people (id),
  date TEXT NOT NULL CHECK (date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  aircraft TEXT,
  target_airspeed_kt REAL,
  intercept_airspeed_kt REAL,
  vref_kt REAL,
  conditions TEXT CHECK (conditions IN ('imc', 'simulated', 'vmc')),
  syllabus_number TEXT,
  objective TEXT
) STRICT;
CREATE INDEX lessons_of_student ON lessons (student_id, date);

CREATE TABLE facilities (
  sha256 TEXT PRIMARY KEY,
  name TEXT NOT NULL,
  ident TEXT,
  designator TEXT NOT NULL,
  content TEXT NOT NULL,
  added_utc TEXT NOT NULL
) STRICT;

-- The file itself is logs/<sha256>.gz beside the library's.
CREATE TABLE logs (
  sha256 TEXT PRIMARY KEY,
  lesson_id TEXT NOT NULL REFERENCES lessons (id) ON DELETE CASCADE,
  file_name TEXT NOT NULL,
  bytes INTEGER NOT NULL,
  kind TEXT NOT NULL,
  fixes INTEGER NOT NULL,
  start_utc TEXT NOT NULL,
  end_utc TEXT NOT NULL,
  added_utc TEXT NOT NULL
) STRICT;
CREATE INDEX logs_of_lesson ON logs (lesson_id);

-- Log files that are about to come or to go. Without its row in logs, the file of one named here is removed.
CREATE TABLE pending_logs (sha256 TEXT PRIMARY KEY) STRICT;

CREATE TABLE debriefs (
  id TEXT PRIMARY KEY,
  log_sha256 TEXT NOT NULL REFERENCES logs (sha256) ON DELETE CASCADE,
  facility_sha256 TEXT NOT NULL REFERENCES facilities (sha256),
  standard_id TEXT NOT NULL,
  standard TEXT NOT NULL,
  stated TEXT NOT NULL,
  settings TEXT NOT NULL,
  heights TEXT CHECK (heights IN ('as-logged', 'from-rollout')),
  antenna_height_ft REAL,
  engine_version TEXT NOT NULL,
  document_sha256 TEXT NOT NULL,
  made_utc TEXT NOT NULL,
  UNIQUE (log_sha256, facility_sha256, standard_id)
) STRICT;

-- halfdot-debrief/1 as JSON, packed with gzip; the hash is of the JSON. What was signed stays beside what is newer.
CREATE TABLE documents (
  debrief_id TEXT NOT NULL REFERENCES debriefs (id) ON DELETE CASCADE,
  sha256 TEXT NOT NULL,
  engine_version TEXT NOT NULL,
  json_gz BLOB NOT NULL,
  PRIMARY KEY (debrief_id, sha256)
) STRICT;

-- What lists show, copied out of the documents so that a list reads nothing else.
CREATE TABLE approaches (
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
  PRIMARY KEY (debrief_id, number)
) STRICT;
CREATE INDEX approaches_by_date ON approaches (date, start_utc);
CREATE INDEX approaches_of_student ON approaches (student_id, date, start_utc);
CREATE INDEX approaches_of_lesson ON approaches (lesson_id);
`;
