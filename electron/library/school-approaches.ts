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
import { mixOf } from './mix-text.ts';
import { standardsByKey } from './standards-by-key.ts';

/** What is read of a school. */
export interface SchoolRows {
  /**
   * Every judged approach of a student with what it says of one measure; see `makeMissingFacts` for those without facts.
   * Those of nobody are left out: nothing can be told of whom they were; and those that only a draft judged, or nothing.
   */
  readonly approaches: readonly SchoolApproach[];
  /** Logs with an approach or a pass, whoever flew it. */
  readonly logsFlown: number;
  readonly approachesOfNobody: number;
  readonly passes: number;
  /** Approaches of somebody that only a draft judged, of which nobody had confirmed the values. */
  readonly byDraft: number;
  /** Approaches of somebody whose heights seem to be in another unit: they were held to nothing. */
  readonly unitDoubted: number;
  /** Approaches of somebody that were not held to the criterion: of other standards. */
  readonly notHeld: number;
}

export function schoolApproaches(library: Library, { id, measure }: SchoolMeasure): SchoolRows {
  const rows = library.packed<Row>(approachesWith(id), Object.keys(COLUMNS));
  const lessons = lessonsOf(library);
  const judgings = judgingsOf(library, new Set(rows.map((row) => row[COLUMNS.judging])));
  const mixes = new Mixes();
  const approaches: SchoolApproach[] = [];
  let [approachesOfNobody, passes, byDraft, unitDoubted, notHeld] = [0, 0, 0, 0, 0];
  for (const row of rows) {
    const lesson = lessons.get(row[COLUMNS.lesson]);
    const counts = row[COLUMNS.counts];
    if (counts === AS.pass) passes++;
    else if (!lesson) approachesOfNobody++;
    else if (counts === AS.byDraft) byDraft++;
    else if (counts === AS.unitDoubted) unitDoubted++;
    else if (measure !== 'level' && row[COLUMNS.verdict] === null) notHeld++;
    else
      approaches.push({
        ref: row[COLUMNS.ref],
        studentId: lesson.studentId,
        instructorId: lesson.instructorId,
        lessonId: lesson.lessonId,
        date: lesson.date,
        startUtc: row[COLUMNS.startUtc],
        endUtc: row[COLUMNS.endUtc],
        logSha256: row[COLUMNS.log],
        judgedBy: judgings.get(row[COLUMNS.judging])!,
        caseMix: mixes.of(row[COLUMNS.mix], lesson.aircraft),
        wentOn: row[COLUMNS.wentOn],
        ...(measure === 'level' ? levelOf(row) : toldOf(row, measure)),
      });
  }
  const logsFlown = new Set(rows.map((row) => row[COLUMNS.log])).size;
  return { approaches, logsFlown, approachesOfNobody, passes, byDraft, unitDoubted, notHeld };
}

/** What a row counts as. */
const AS = { approach: 0, pass: 1, byDraft: 2, unitDoubted: 3 } as const;

/** Places of the columns of a row. Lessons are named by their rows, which is shorter than by their ids. */
const COLUMNS = {
  lesson: 0,
  log: 1,
  startUtc: 2,
  endUtc: 3,
  judging: 4,
  mix: 5,
  wentOn: 6,
  counts: 7,
  level: 8,
  isOpen: 9,
  verdict: 10,
  rms: 11,
  insideShare: 12,
  ref: 13,
} as const;

type Row = readonly [
  lesson: number,
  log: string,
  startUtc: string,
  endUtc: string,
  judging: string,
  mix: string,
  wentOn: SchoolApproach['wentOn'],
  counts: (typeof AS)[keyof typeof AS],
  level: number | null,
  isOpen: 0 | 1 | null,
  verdict: Verdict | null,
  rms: number | null,
  insideShare: number | null,
  ref: number,
];

type Told = Pick<SchoolApproach, 'verdict' | 'value'>;

function levelOf(row: Row): Told {
  const level = row[COLUMNS.level];
  const graded = level === null ? null : { level, isOpen: row[COLUMNS.isOpen] === 1 };
  return { verdict: levelVerdict({ level: graded }), value: graded?.isOpen ? null : level };
}

function toldOf(row: Row, measure: Measure): Told {
  const verdict = row[COLUMNS.verdict]!;
  if (measure === 'rms') return { verdict, value: row[COLUMNS.rms] };
  if (measure === 'inside-by-distance') return { verdict, value: row[COLUMNS.insideShare] };
  const isDecided = verdict === 'met' || verdict === 'not-met';
  return { verdict, value: isDecided ? Number(verdict === 'met') : null };
}

/** One object for all that are the same. */
class Mixes {
  readonly #known = new Map<string, Map<string | null, ApproachMix>>();

  of(text: string, aircraft: string | null): ApproachMix {
    const alike = this.#known.get(text) ?? new Map<string | null, ApproachMix>();
    this.#known.set(text, alike);
    const there = alike.get(aircraft);
    if (there) return there;
    const mix = { ...mixOf(text), aircraft };
    alike.set(aircraft, mix);
    return mix;
  }
}

/** What was held to anything has its verdicts here; few are without a level, so that few are looked up. */
const COUNTS_AS = sql<(typeof AS)[keyof typeof AS]>`CASE
  WHEN approaches.kind != 'approach' THEN ${sql.lit(AS.pass)}
  WHEN facts.by_draft THEN ${sql.lit(AS.byDraft)}
  WHEN approaches.level IS NULL
    AND NOT EXISTS (SELECT 1 FROM measures AS held WHERE held.approach_id = approaches.id) THEN ${sql.lit(AS.unitDoubted)}
  ELSE ${sql.lit(AS.approach)} END`;
/** What an approach was judged by, in short. */
const JUDGING = sql<string>`substr(facts.standard_sha256, 1, 16) || ' ' || facts.engine_version`;

function approachesWith(criterion: string) {
  return from
    .selectFrom('approaches')
    .innerJoin('approach_facts as facts', 'facts.approach_id', 'approaches.id')
    .innerJoin('lessons', 'lessons.id', 'approaches.lesson_id')
    .leftJoin('measures', (join) =>
      join.onRef('measures.approach_id', '=', 'approaches.id').on('measures.criterion', '=', criterion),
    )
    .select([
      sql<number>`lessons.rowid`.as('lesson'),
      // So much of the hash tells it from any other.
      sql<string>`substr(facts.log_sha256, -16)`.as('log'),
      'approaches.start_utc as startUtc',
      'facts.end_utc as endUtc',
      JUDGING.as('judging'),
      'facts.mix',
      'facts.went_on as wentOn',
      COUNTS_AS.as('counts'),
      'approaches.level',
      sql<0 | 1>`approaches.level_low != approaches.level_high`.as('isOpen'),
      'measures.verdict',
      'measures.rms',
      'measures.inside_share as insideShare',
      'approaches.id as ref',
    ]);
}

type LessonRow = [
  row: number,
  id: string,
  student: string,
  instructor: string | null,
  date: string,
  aircraft: string | null,
];

/** Those of somebody, by their rows. */
function lessonsOf(library: Library) {
  const columns = ['row', 'id', 'student_id', 'instructor_id', 'date', 'aircraft'];
  const rows = library.packed<LessonRow>(
    from
      .selectFrom('lessons')
      .where('student_id', 'is not', null)
      .select([sql<number>`rowid`.as('row'), 'id', 'student_id', 'instructor_id', 'date', 'aircraft']),
    columns,
  );
  return new Map(
    rows.map(([row, lessonId, studentId, instructorId, date, aircraft]) => [
      row,
      { lessonId, studentId, instructorId, date, aircraft },
    ]),
  );
}

/** One object for all that were judged by the same. */
function judgingsOf(library: Library, judgings: Iterable<string>): Map<string, JudgedBy> {
  const judged = [...judgings].map((judging) => ({ judging, ...oneJudgedBy(library, judging) }));
  const standards = standardsByKey(library, judged);
  return new Map(
    judged.map(({ judging, standard_sha256: standardKey, engine_version: engineVersion }) => {
      const { title, source } = standards.get(standardKey)!;
      return [judging, { standardKey, standardTitle: title, standardSource: source, engineVersion }];
    }),
  );
}

function oneJudgedBy(library: Library, judging: string) {
  return library.first(
    from
      .selectFrom('approach_facts as facts')
      .innerJoin('approaches', 'approaches.id', 'facts.approach_id')
      .select(['approaches.debrief_id', 'facts.standard_sha256', 'facts.engine_version'])
      .where(JUDGING, '=', judging)
      .limit(1),
  )!;
}
