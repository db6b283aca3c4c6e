import { sql, type RawBuilder, type SelectQueryBuilder } from 'kysely';
import type { FlightFilter, FlightOrder } from '../bridge/library-calls.ts';
import { folded } from '../bridge/names.ts';
import { alphabetically, foldedColumn } from './folded-column.ts';
import { from, type Library } from './library.ts';
import type { Tables } from './tables.ts';

/** A part of the list in its order, and how long all of it is: 20,000 are not handed over for the 30 that are seen. */
export function flightRows(
  library: Library,
  filter: FlightFilter,
  order: FlightOrder,
  part: { readonly from: number; readonly count: number },
) {
  const { total } = library.first(filtered(filter).select(sql<number>`count(*)`.as('total')))!;
  // The keys first: what is looked up of a row is looked up for this part alone.
  const keys = ordered(filtered(filter).select(['approaches.debrief_id', 'approaches.number']), order)
    .limit(part.count)
    .offset(part.from);
  const rows = from
    .selectFrom(keys.as('part'))
    .innerJoin('approaches', (join) =>
      join
        .onRef('approaches.debrief_id', '=', 'part.debrief_id')
        .onRef('approaches.number', '=', 'part.number'),
    )
    .innerJoin('debriefs', 'debriefs.id', 'approaches.debrief_id')
    .innerJoin('logs', 'logs.sha256', 'debriefs.log_sha256')
    .leftJoin('people', 'people.id', 'approaches.student_id')
    .select([
      'approaches.debrief_id as debriefId',
      'approaches.number',
      'logs.sha256',
      'logs.file_name as fileName',
      'approaches.lesson_id as lessonId',
      'approaches.date',
      'approaches.start_utc as startUtc',
      'people.name as student',
      'approaches.facility',
      'approaches.standard_id as standardId',
      'approaches.kind',
      'approaches.outcome',
      'approaches.level',
      'approaches.level_low as levelLow',
      'approaches.level_high as levelHigh',
      'approaches.score',
      'approaches.score_low as scoreLow',
      'approaches.score_high as scoreHigh',
      'approaches.summary',
      'debriefs.document_sha256 as document',
    ]);
  return { total, rows: library.all(ordered(rows, order)) };
}

/** The hashes of all logs on the list, each once. */
export function flightLogs(library: Library, filter: FlightFilter): string[] {
  const logs = filtered(filter)
    .innerJoin('debriefs', 'debriefs.id', 'approaches.debrief_id')
    .select('debriefs.log_sha256')
    .distinct();
  return library.all(logs).map(({ log_sha256 }) => log_sha256);
}

/** Logs in which no approach was found: they are somebody's too. */
export function logsWithoutApproach(library: Library) {
  return library.all(
    from
      .selectFrom('logs')
      .innerJoin('lessons', 'lessons.id', 'logs.lesson_id')
      .leftJoin('people', 'people.id', 'lessons.student_id')
      .where(({ not, exists, selectFrom }) =>
        not(
          exists(
            selectFrom('debriefs')
              .innerJoin('approaches', 'approaches.debrief_id', 'debriefs.id')
              .select('debriefs.id')
              .whereRef('debriefs.log_sha256', '=', 'logs.sha256'),
          ),
        ),
      )
      .select([
        'logs.sha256',
        'logs.file_name as fileName',
        'lessons.id as lessonId',
        'lessons.date',
        'people.name as student',
      ])
      .orderBy('lessons.date', 'desc')
      .orderBy('logs.start_utc', 'desc'),
  );
}

type WithStudent = Tables & { people: { [K in keyof Tables['people']]: Tables['people'][K] | null } };
type Rows<T = object> = SelectQueryBuilder<WithStudent, 'approaches' | 'people', T>;

function filtered(filter: FlightFilter): Rows {
  const { student, lessonId, facility, fromDate, toDate, levelAtMost, words } = filter;
  let rows: Rows = from.selectFrom('approaches').leftJoin('people', 'people.id', 'approaches.student_id');
  if (student === 'nobody') rows = rows.where('approaches.student_id', 'is', null);
  else if (student !== null) rows = rows.where('approaches.student_id', '=', student.id);
  if (lessonId !== null) rows = rows.where('approaches.lesson_id', '=', lessonId);
  if (facility !== null) rows = rows.where('approaches.facility', '=', facility);
  if (fromDate !== null) rows = rows.where('approaches.date', '>=', fromDate);
  if (toDate !== null) rows = rows.where('approaches.date', '<=', toDate);
  if (levelAtMost !== null) rows = rows.where('approaches.level', '<=', levelAtMost);
  for (const word of words?.split(/\s+/).filter(Boolean) ?? []) rows = rows.where(holds(word));
  return rows;
}

/**
 * Whether a word stands in what an approach shows, in whatever spelling. Names are looked through once each and not at
 * every approach, and a log's debriefs where its name has the word: joined to them it takes five times as long. The
 * sentence is the program's own, in English.
 */
function holds(word: string): RawBuilder<boolean> {
  const spellings = folded(word).split('\n');
  // As they stand: LIKE would take some letters for any.
  const within = (text: RawBuilder<string>) =>
    sql.join(
      spellings.map((spelling) => sql`instr(${text}, ${spelling}) > 0`),
      sql` OR `,
    );
  return sql<boolean>`(${within(sql<string>`lower(approaches.summary)`)}
    OR approaches.student_id IN (SELECT id FROM people WHERE ${within(foldedColumn('people.name'))})
    OR approaches.facility IN (SELECT name FROM facilities WHERE ${within(foldedColumn('facilities.name'))})
    OR approaches.debrief_id IN (SELECT id FROM debriefs WHERE log_sha256 IN (
      SELECT sha256 FROM logs WHERE ${within(foldedColumn('logs.file_name'))})))`;
}

const COLUMNS = {
  student: 'people.name',
  facility: 'approaches.facility',
  outcome: 'approaches.outcome',
  level: 'approaches.level',
  score: 'approaches.score',
} as const;

/** What is not known stands last, whichever way; among equals the newest first, and always in one order. */
function ordered<Q extends { orderBy(expression: never, direction?: 'asc' | 'desc'): Q }>(
  rows: Q,
  { by, isDown }: FlightOrder,
): Q {
  const way = isDown ? 'desc' : 'asc';
  const sorted = rows as unknown as Rows;
  const first = by === 'flown' ? sorted : byColumn(sorted, by, way);
  const newest = by === 'flown' ? way : 'desc';
  return first
    .orderBy('approaches.date', newest)
    .orderBy('approaches.start_utc', newest)
    .orderBy('approaches.debrief_id')
    .orderBy('approaches.number') as unknown as Q;
}

function byColumn(rows: Rows, by: keyof typeof COLUMNS, way: 'asc' | 'desc'): Rows {
  const column = COLUMNS[by];
  const isName = by === 'student' || by === 'facility';
  return rows
    .orderBy(sql`${sql.ref(column)} IS NULL`)
    .orderBy(isName ? alphabetically(column) : sql.ref(column), way);
}
