import { readDocument } from './documents.ts';
import { from, type Library } from './library.ts';
import { LibraryRefusal } from './refusal.ts';
import type { DebriefOfLesson } from '../../core/progress/approach-facts.ts';

/** The debriefs of a student's logs in the order of the lessons, none of them read yet. */
export function debriefsOfStudent(library: Library, studentId: string) {
  return library.all(
    from
      .selectFrom('debriefs')
      .innerJoin('logs', 'logs.sha256', 'debriefs.log_sha256')
      .innerJoin('lessons', 'lessons.id', 'logs.lesson_id')
      .where('lessons.student_id', '=', studentId)
      .select([
        'debriefs.id',
        'debriefs.standard as standardText',
        'logs.file_name as fileName',
        'lessons.id as lessonId',
        'lessons.date',
      ])
      .orderBy('lessons.date')
      .orderBy('logs.start_utc')
      .orderBy('debriefs.id'),
  );
}

type ListedDebrief = ReturnType<typeof debriefsOfStudent>[number];

/** The same with its document; null where the library cannot read that any more, so that it costs no other. */
export function debriefOfLesson(
  library: Library,
  { id, lessonId, date, standardText }: ListedDebrief,
): DebriefOfLesson | null {
  try {
    return { lessonId, date, standardText, debrief: readDocument(library, id) };
  } catch (error) {
    if (error instanceof LibraryRefusal) return null;
    throw error;
  }
}
