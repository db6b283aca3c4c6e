import { sql } from 'kysely';
import { from, type Library } from './library.ts';

/** Everybody who flies, with how much there is of them; none of it read from a document. */
export function listStudents(library: Library) {
  return library.all(
    from
      .selectFrom('people')
      .where('people.role', '=', 'student')
      .select([
        'people.name as student',
        sql<number>`(SELECT count(*) FROM lessons WHERE student_id = people.id)`.as('lessons'),
        sql<number>`(SELECT count(*) FROM approaches WHERE student_id = people.id)`.as('approaches'),
        sql<string | null>`(SELECT max(date) FROM lessons WHERE student_id = people.id)`.as('last'),
      ])
      .orderBy('people.name'),
  );
}

/** Lessons by date, of one student or of all. */
export function listLessons(library: Library, studentId: string | null) {
  const lessons = from
    .selectFrom('lessons')
    .leftJoin('people', 'people.id', 'lessons.student_id')
    .leftJoin('logs', 'logs.lesson_id', 'lessons.id')
    .groupBy('lessons.id')
    .select([
      'lessons.date',
      'people.name as student',
      'lessons.aircraft',
      'lessons.conditions',
      'lessons.syllabus_number as syllabusNumber',
      'lessons.objective',
      sql<number>`count(logs.sha256)`.as('logs'),
      sql<number>`(SELECT count(*) FROM approaches WHERE approaches.lesson_id = lessons.id)`.as('approaches'),
    ])
    .orderBy('lessons.date')
    .orderBy('people.name');
  return library.all(studentId === null ? lessons : lessons.where('lessons.student_id', '=', studentId));
}

/** Approaches in the order flown, of one student or of all. */
export function listApproaches(library: Library, studentId: string | null) {
  const approaches = from
    .selectFrom('approaches')
    .leftJoin('people', 'people.id', 'approaches.student_id')
    .select([
      'approaches.date',
      'approaches.start_utc as startUtc',
      'people.name as student',
      'approaches.facility',
      'approaches.standard_id as standard',
      'approaches.kind',
      'approaches.outcome',
      'approaches.level',
      'approaches.level_low as levelLow',
      'approaches.level_high as levelHigh',
      'approaches.score',
      'approaches.score_low as scoreLow',
      'approaches.score_high as scoreHigh',
      'approaches.summary',
    ])
    .orderBy('approaches.date')
    .orderBy('approaches.start_utc');
  return library.all(
    studentId === null ? approaches : approaches.where('approaches.student_id', '=', studentId),
  );
}

/** The latest version of each facility that was flown to, as its file's text. */
export function listFacilities(library: Library): string[] {
  return library
    .all(
      from
        .selectFrom('facilities')
        .select(['content', sql<string>`max(added_utc)`.as('added_utc')])
        .groupBy(['name', 'designator'])
        .orderBy('name'),
    )
    .map(({ content }) => content);
}
