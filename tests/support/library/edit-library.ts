import { changeLesson } from '../../../electron/library/lessons.ts';
import { from } from '../../../electron/library/library.ts';
import { moveLogs, undoMove } from '../../../electron/library/moves.ts';
import { openLibrary } from '../../../electron/library/open-library.ts';
import { addNote } from '../../../electron/library/record.ts';

/**
 * Writes in a library until it is killed: `edit-library.mjs FOLDER WORD`. Every note is told once it is kept, so that
 * a test knows what has to be there.
 */
const [folder, word] = process.argv.slice(2);
const library = await openLibrary(folder!, 'existing');
const logs = library.all(from.selectFrom('logs').select('sha256')).map(({ sha256 }) => sha256);
const [lesson] = library.all(from.selectFrom('lessons').select('id'));
for (let i = 0; ; i++) {
  const text = `${word} ${i}`;
  changeLesson(library, lesson!.id, { objective: text });
  addNote(library, { lesson_id: lesson!.id, debrief_id: null, about_utc: null, author_id: null, text });
  if (i % 2 === 0) moveLogs(library, logs, { studentId: null, date: '2026-03-15' });
  else undoMove(library);
  process.stdout.write(`${text}\n`);
  // Lets the line out.
  await new Promise((resolve) => setImmediate(resolve));
}
