/**
 * Version 3: which logs were given to whom, so that it can be undone. What refers to a lesson or a log that is deleted
 * goes with it; a move of which nothing is left goes too.
 */
export const MOVES = `
CREATE TABLE moves (
  id TEXT PRIMARY KEY,
  moved_utc TEXT NOT NULL,
  undone_utc TEXT
) STRICT;

CREATE TABLE moved_logs (
  move_id TEXT NOT NULL REFERENCES moves (id) ON DELETE CASCADE,
  log_sha256 TEXT NOT NULL REFERENCES logs (sha256) ON DELETE CASCADE,
  from_lesson_id TEXT NOT NULL REFERENCES lessons (id) ON DELETE CASCADE,
  to_lesson_id TEXT NOT NULL REFERENCES lessons (id) ON DELETE CASCADE,
  PRIMARY KEY (move_id, log_sha256)
) STRICT;
CREATE INDEX moves_of_log ON moved_logs (log_sha256);
CREATE INDEX moves_from_lesson ON moved_logs (from_lesson_id);
CREATE INDEX moves_to_lesson ON moved_logs (to_lesson_id);

CREATE TRIGGER move_emptied AFTER DELETE ON moved_logs BEGIN
  DELETE FROM moves WHERE id = OLD.move_id AND NOT EXISTS (SELECT 1 FROM moved_logs WHERE move_id = OLD.move_id);
END;

-- Whether anything is left of a lesson is asked of every lesson in a list.
CREATE INDEX goals_of_lesson ON goals (lesson_id);

-- How many another version made is asked at every change; the rows themselves are long.
CREATE INDEX debriefs_of_engine ON debriefs (engine_version);
`;
