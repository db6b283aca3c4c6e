import { sql } from 'kysely';
import { levelVerdict } from '../../core/progress/lines.ts';
import type { Measure } from '../../core/progress/progress.ts';
import type {
  ApproachMix,
  JudgedBy,
  SchoolApproach,
  SchoolMeasure,
} from '../../core/progress/school/school-input.ts';
import type { Verdict } from '../../core/standard/judgement.ts';
import { from, type Library } from './library.ts';
import { standardsByKey } from './standards-by-key.ts';

/**
 * Every judged approach of a student with what it says of one measure; see `makeMissingFacts` for those without facts.
 * Those of nobody are left out: nothing can be told of whom they were.
 */
export function schoolApproaches(library: Library, { id, measure }: SchoolMeasure): SchoolApproach[] {
  const lessons = lessonsOf(library);
  const judgings = judgingsOf(library);
  return library.packed<Row>(approachesWith(id), Object.keys(COLUMNS)).map((row) => {
    const lesson = lessons.get(row[COLUMNS.lesson])!;
    return {
      studentId: lesson.studentId,
      instructorId: lesson.instructorId,
      lessonId: lesson.lessonId,
      date: lesson.date,
      startUtc: row[COLUMNS.startUtc],
      endUtc: row[COLUMNS.endUtc],
      logSha256: String(row[COLUMNS.log]),
      judgedBy: judgings.get(row[COLUMNS.judging])!,
      caseMix: {
        flown: row[COLUMNS.flown],
        aircraft: lesson.aircraft,
        conditions: row[COLUMNS.conditions],
        turbulence: row[COLUMNS.turbulence],
        localizerFullScaleDeg: row[COLUMNS.fullScaleDeg],
        logKind: row[COLUMNS.logKind],
      },
      wentOn: row[COLUMNS.wentOn],
      ...(measure === 'level' ? levelOf(row) : toldOf(row, measure)),
    };
  });
}

/** Places of the columns of a row. Lessons and logs are named by their rows, which is shorter than by their ids. */
const COLUMNS = {
  lesson: 0,
  log: 1,
  startUtc: 2,
  endUtc: 3,
  judging: 4,
  flown: 5,
  conditions: 6,
  turbulence: 7,
  fullScaleDeg: 8,
  logKind: 9,
  wentOn: 10,
  level: 11,
  isOpen: 12,
  verdict: 13,
  rms: 14,
  insideShare: 15,
} as const;

type Row = readonly [
  lesson: number,
  log: number,
  startUtc: string,
  endUtc: string,
  judging: string,
  flown: ApproachMix['flown'],
  conditions: ApproachMix['conditions'],
  turbulence: string | null,
  fullScaleDeg: number,
  logKind: string,
  wentOn: SchoolApproach['wentOn'],
  level: number | null,
  isOpen: 0 | 1 | null,
  verdict: Verdict | null,
  rms: number | null,
  insideShare: number | null,
];

type Told = Pick<SchoolApproach, 'verdict' | 'value'>;

function levelOf(row: Row): Told {
  const level = row[COLUMNS.level];
  const graded = level === null ? null : { level, isOpen: row[COLUMNS.isOpen] === 1 };
  return { verdict: levelVerdict({ level: graded }), value: graded?.isOpen ? null : level };
}

/** An approach that was not held to the criterion is not assessed. */
function toldOf(row: Row, measure: Measure): Told {
  const verdict = row[COLUMNS.verdict] ?? 'not-assessed';
  if (measure === 'rms') return { verdict, value: row[COLUMNS.rms] };
  if (measure === 'inside-by-time') return { verdict, value: row[COLUMNS.insideShare] };
  const isDecided = verdict === 'met' || verdict === 'not-met';
  return { verdict, value: isDecided ? Number(verdict === 'met') : null };
}

/** What an approach was judged by, in short. */
const JUDGING = sql<string>`substr(facts.standard_sha256, 1, 16) || ' ' || facts.engine_version`;

function approachesWith(criterion: string) {
  return from
    .selectFrom('approaches')
    .innerJoin('approach_facts as facts', (join) =>
      join
        .onRef('facts.debrief_id', '=', 'approaches.debrief_id')
        .onRef('facts.number', '=', 'approaches.number'),
    )
    .innerJoin('lessons', 'lessons.id', 'approaches.lesson_id')
    .innerJoin('logs', 'logs.sha256', 'facts.log_sha256')
    .leftJoin('measures', (join) =>
      join
        .onRef('measures.debrief_id', '=', 'approaches.debrief_id')
        .onRef('measures.number', '=', 'approaches.number')
        .on('measures.criterion', '=', criterion),
    )
    .where('lessons.student_id', 'is not', null)
    .where('approaches.kind', '=', 'approach')
    .select([
      sql<number>`lessons.rowid`.as('lesson'),
      sql<number>`logs.rowid`.as('log'),
      'approaches.start_utc as startUtc',
      'facts.end_utc as endUtc',
      JUDGING.as('judging'),
      'facts.flown',
      'facts.conditions',
      'facts.turbulence',
      'facts.localizer_full_scale_deg as fullScaleDeg',
      'logs.kind as logKind',
      'facts.went_on as wentOn',
      'approaches.level',
      sql<0 | 1>`approaches.level_low != approaches.level_high`.as('isOpen'),
      'measures.verdict',
      'measures.rms',
      'measures.inside_share as insideShare',
    ]);
}

/** By their rows. */
function lessonsOf(library: Library) {
  const rows = library.tuples<
    [
      row: number,
      id: string,
      student: string,
      instructor: string | null,
      date: string,
      aircraft: string | null,
    ]
  >(
    from
      .selectFrom('lessons')
      .where('student_id', 'is not', null)
      .select([sql<number>`rowid`.as('row'), 'id', 'student_id', 'instructor_id', 'date', 'aircraft']),
  );
  return new Map(
    rows.map(([row, lessonId, studentId, instructorId, date, aircraft]) => [
      row,
      { lessonId, studentId, instructorId, date, aircraft },
    ]),
  );
}

/** One object for all that were judged by the same. */
function judgingsOf(library: Library): Map<string, JudgedBy> {
  const judged = library.all(
    from
      .selectFrom('approach_facts as facts')
      .groupBy(['facts.standard_sha256', 'facts.engine_version'])
      .select(['facts.standard_sha256', 'facts.engine_version', JUDGING.as('judging')])
      .select(({ fn }) => fn.min('facts.debrief_id').as('debrief_id')),
  );
  const standards = standardsByKey(library, judged);
  return new Map(
    judged.map(({ judging, standard_sha256: standardKey, engine_version: engineVersion }) => {
      const { title, source } = standards.get(standardKey)!;
      return [judging, { standardKey, standardTitle: title, standardSource: source, engineVersion }];
    }),
  );
}
