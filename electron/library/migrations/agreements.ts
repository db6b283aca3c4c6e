/**
 * Version 2: what people say about a flight. An approach is named by the moment at which it began and not by its
 * number, which a newer engine may give to another; without a moment the whole debrief is meant.
 */
export const AGREEMENTS = `
CREATE TABLE notes (
  id TEXT PRIMARY KEY,
  lesson_id TEXT NOT NULL REFERENCES lessons (id) ON DELETE CASCADE,
  debrief_id TEXT REFERENCES debriefs (id) ON DELETE CASCADE,
  about_utc TEXT,
  author_id TEXT REFERENCES people (id),
  text TEXT NOT NULL CHECK (trim(text) <> ''),
  written_utc TEXT NOT NULL
) STRICT;
CREATE INDEX notes_of_lesson ON notes (lesson_id);
CREATE INDEX notes_of_debrief ON notes (debrief_id);

-- What the student thought of the approach before seeing the debrief.
CREATE TABLE estimates (
  id TEXT PRIMARY KEY,
  debrief_id TEXT NOT NULL REFERENCES debriefs (id) ON DELETE CASCADE,
  about_utc TEXT,
  level INTEGER CHECK (level BETWEEN 1 AND 5),
  words TEXT,
  given_utc TEXT NOT NULL,
  CHECK (level IS NOT NULL OR words IS NOT NULL)
) STRICT;
CREATE INDEX estimates_of_debrief ON estimates (debrief_id);

CREATE TABLE goals (
  id TEXT PRIMARY KEY,
  student_id TEXT NOT NULL REFERENCES people (id) ON DELETE CASCADE,
  lesson_id TEXT REFERENCES lessons (id) ON DELETE SET NULL,
  text TEXT NOT NULL CHECK (trim(text) <> ''),
  agreed_utc TEXT NOT NULL,
  reached_utc TEXT
) STRICT;
CREATE INDEX goals_of_student ON goals (student_id);

-- Who graded and who countersigned, and which document it was: a newer engine's answer is not what they signed.
CREATE TABLE signatures (
  id TEXT PRIMARY KEY,
  debrief_id TEXT NOT NULL,
  document_sha256 TEXT NOT NULL,
  person_id TEXT NOT NULL REFERENCES people (id),
  act TEXT NOT NULL CHECK (act IN ('graded', 'countersigned')),
  signed_utc TEXT NOT NULL,
  UNIQUE (debrief_id, document_sha256, person_id, act),
  FOREIGN KEY (debrief_id, document_sha256) REFERENCES documents (debrief_id, sha256) ON DELETE CASCADE
) STRICT;
`;
