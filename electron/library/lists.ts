import { sql } from 'kysely';
import { IS_LISTED } from './emptied-lessons.ts';
import { alphabetically } from './folded-column.ts';
import { flownCount } from './flown-count.ts';
import { from, type Library } from './library.ts';

/** Everybody who flies, with how much there is of them; none of it read from a document. */
export function listStudents(library: Library) {
  return library.all(
    from
      .selectFrom('people')
      .where('people.role', '=', 'student')
      .select([
        'people.name as student',
        sql<number>`(SELECT count(*) FROM lessons WHERE student_id = people.id AND ${IS_LISTED})`.as(
          'lessons',
        ),
        flownCount(sql`approaches.student_id = people.id`).as('approaches'),
        sql<string | null>`(SELECT max(date) FROM lessons WHERE student_id = people.id AND ${IS_LISTED})`.as(
          'last',
        ),
      ])
      .orderBy(alphabetically('people.name')),
  );
}

/** Lessons by date, of one student or of all. */
export function listLessons(library: Library, studentId: string | null) {
  const lessons = from
    .selectFrom('lessons')
    .leftJoin('people', 'people.id', 'lessons.student_id')
    .leftJoin('people as instructors', 'instructors.id', 'lessons.instructor_id')
    .leftJoin('logs', 'logs.lesson_id', 'lessons.id')
    .where(IS_LISTED)
    .groupBy('lessons.id')
    .select([
      'lessons.id',
      'lessons.date',
      'people.name as student',
      'instructors.name as instructor',
      'lessons.aircraft',
      'lessons.target_airspeed_kt as targetAirspeedKt',
      'lessons.intercept_airspeed_kt as interceptAirspeedKt',
      'lessons.vref_kt as vrefKt',
      'lessons.conditions',
      'lessons.syllabus_number as syllabusNumber',
      'lessons.objective',
      sql<number>`count(logs.sha256)`.as('logs'),
      flownCount(sql`approaches.lesson_id = lessons.id`).as('approaches'),
    ])
    .orderBy('lessons.date')
    .orderBy(alphabetically('people.name'));
  return library.all(studentId === null ? lessons : lessons.where('lessons.student_id', '=', studentId));
}

/** Approaches in the order flown, of one student or of all. */
export function listApproaches(library: Library, studentId: string | null): ListedApproach[] {
  const approaches = from
    .selectFrom('approaches')
    .leftJoin('people', 'people.id', 'approaches.student_id')
    .select([
      'approaches.date',
      'approaches.start_utc',
      'people.name',
      'approaches.facility',
      'approaches.standard_id',
      'approaches.kind',
      'approaches.outcome',
      'approaches.level',
      'approaches.level_low',
      'approaches.level_high',
      'approaches.score',
      'approaches.score_low',
      'approaches.score_high',
      'approaches.summary',
    ])
    .orderBy('approaches.date')
    .orderBy('approaches.start_utc');
  const asked = studentId === null ? approaches : approaches.where('approaches.student_id', '=', studentId);
  return library.tuples<Values>(asked).map(listed);
}

type ListedApproach = {
  readonly date: string;
  readonly startUtc: string;
  /** Null where nobody said. */
  readonly student: string | null;
  readonly facility: string;
  readonly standard: string;
  readonly kind: string;
  readonly outcome: string;
  /** Null where it was not graded; the others tell between what it lies. */
  readonly level: number | null;
  readonly levelLow: number | null;
  readonly levelHigh: number | null;
  readonly score: number | null;
  readonly scoreLow: number | null;
  readonly scoreHigh: number | null;
  readonly summary: string;
};

/** The values of a row, in the order of its columns above. */
type Values = readonly [
  ...texts: [string, string, string | null, string, string, string, string],
  ...figures: (number | null)[],
  summary: string,
];

/** Written out, since a loop over names takes as long as to read the rows. */
function listed(row: Values): ListedApproach {
  return {
    date: row[0],
    startUtc: row[1],
    student: row[2],
    facility: row[3],
    standard: row[4],
    kind: row[5],
    outcome: row[6],
    level: row[7] as number | null,
    levelLow: row[8] as number | null,
    levelHigh: row[9] as number | null,
    score: row[10] as number | null,
    scoreLow: row[11] as number | null,
    scoreHigh: row[12] as number | null,
    summary: row[13] as string,
  };
}

/** The latest version of each facility that was flown to, as its file's text. */
export function listFacilities(library: Library): string[] {
  return library
    .all(
      from
        .selectFrom('facilities')
        .select(['content', sql<string>`max(added_utc)`.as('added_utc')])
        .groupBy(['name', 'designator'])
        .orderBy(alphabetically('name')),
    )
    .map(({ content }) => content);
}
