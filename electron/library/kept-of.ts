import { from, type Library } from './library.ts';

/** What is kept of a log that is in the library: how much was found in it, where, and whose it is. */
export function keptOf(library: Library, sha256: string) {
  const { lessonId, student, date } = library.first(
    from
      .selectFrom('logs')
      .innerJoin('lessons', 'lessons.id', 'logs.lesson_id')
      .leftJoin('people', 'people.id', 'lessons.student_id')
      .select(['lessons.id as lessonId', 'lessons.date', 'people.name as student'])
      .where('logs.sha256', '=', sha256),
  )!;
  const debriefs = library.all(
    from
      .selectFrom('debriefs')
      .innerJoin('facilities', 'facilities.sha256', 'debriefs.facility_sha256')
      .select(['debriefs.id', 'facilities.name'])
      .where('log_sha256', '=', sha256),
  );
  const ids = debriefs.map(({ id }) => id);
  const approaches = library.all(
    from.selectFrom('approaches').select('number').where('debrief_id', 'in', ids),
  );
  return {
    lessonId,
    student,
    date,
    debriefIds: ids,
    facilities: [...new Set(debriefs.map(({ name }) => name))],
    approaches: approaches.length,
  };
}
