import { join } from 'node:path';
import { defineFacility } from '../../core/analyze.ts';
import { DEFAULT_STANDARD } from '../../core/standard/standards.ts';
import { NOTHING_STATED } from '../../core/standard/stated.ts';
import { importLog, type ImportAsked } from '../../electron/library/import-log.ts';
import type { Library } from '../../electron/library/library.ts';
import { listApproaches } from '../../electron/library/lists.ts';
import { openLibrary } from '../../electron/library/open-library.ts';
import { personNamed } from '../../electron/library/people.ts';
import { SAMPLE_FACILITIES, sampleFiles } from '../support/samples/sample-files.ts';
import { timingOf } from './measure.ts';
import { assert, type Row } from './rows.ts';

const APPROACHES = 20_000;
const STUDENTS = 100;
const ROUNDS = 9;
const JOB = { progress: () => {}, cancelled: () => false };

/**
 * A library of 20,000 approaches: opened, listed whole, and one student's alone. The sample flights are imported as a
 * user would import them, with their debriefs; their rows are multiplied by SQL.
 */
export async function libraryLists(folder: string): Promise<Row> {
  const path = join(folder, 'library');
  await fill(path);
  const openMs: number[] = [];
  const wholeMs: number[] = [];
  const studentMs: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    let library!: Library;
    openMs.push(await timed(async () => void (library = await openLibrary(path, 'existing'))));
    wholeMs.push(
      await timed(() => assert(listApproaches(library, null).length >= APPROACHES, 'a short list')),
    );
    studentMs.push(
      await timed(() => {
        const { id } = personNamed(library, 'student', 'student 7');
        const { length } = listApproaches(library, id);
        assert(length > APPROACHES / STUDENTS / 2 && length < (APPROACHES / STUDENTS) * 2, 'another list');
      }),
    );
    library.close();
  }
  const [opened, whole, student] = [openMs, wholeMs, studentMs].map(timingOf) as [Timing, Timing, Timing];
  const slowest = [opened, whole, student].reduce((a, b) => (b.median > a.median ? b : a));
  const words = [opened, whole, student].map(({ median }) => `${median.toFixed(1)} ms`);
  return {
    what: 'library of 20,000 approaches: the slowest of open, list and one student, in ms',
    budget: 150,
    ratio: slowest.median,
    spread: slowest,
    detail: `open ${words[0]}, list ${words[1]}, one student ${words[2]}`,
  };
}

type Timing = ReturnType<typeof timingOf>;

async function timed(work: () => unknown): Promise<number> {
  const startMs = performance.now();
  await work();
  return performance.now() - startMs;
}

async function fill(path: string): Promise<void> {
  const library = await openLibrary(path, 'create');
  try {
    const asked = askedOf();
    for (const [name, text] of sampleFiles()) {
      if (!/\.(csv|gpx)$/.test(name)) continue;
      const bytes = Buffer.from(text);
      const imported = await importLog(library, { name, bytes }, asked, JOB);
      assert(imported.ok, `${name} is refused`);
    }
    library.write(() => multiply(library, listApproaches(library, null).length));
  } finally {
    library.close();
  }
}

function askedOf(): ImportAsked {
  const [first, ...others] = [...SAMPLE_FACILITIES].map(([name, facility]) => {
    const defined = defineFacility(JSON.stringify(facility), name);
    assert(defined.ok, `${name} is refused`);
    return defined.value;
  });
  return {
    facilities: [first!, ...others],
    settings: {},
    judging: { standard: DEFAULT_STANDARD, stated: NOTHING_STATED },
    student: null,
    date: '2026-05-01',
  };
}

/** Copies every lesson with its logs, debriefs and approaches, a student and a day to each copy. */
function multiply(library: Library, flown: number): void {
  const copies = Math.ceil(APPROACHES / flown);
  const student = `'s' || (n % ${STUDENTS})`;
  const day = "date('2020-01-01', '+' || n || ' days')";
  const log = "printf('%.56s%08d', logs.sha256, n)";
  const each = (sql: string) =>
    library.execute(
      `WITH RECURSIVE copy (n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM copy WHERE n < ${copies}) ${sql}`,
    );
  for (let i = 0; i < STUDENTS; i++)
    library.execute("INSERT INTO people VALUES (?, 'student', ?, '2026')", `s${i}`, `Student ${i}`);
  each(`INSERT INTO lessons (id, student_id, date) SELECT id || n, ${student}, ${day} FROM lessons, copy`);
  each(`INSERT INTO logs SELECT ${log}, lesson_id || n, file_name, bytes, kind, fixes, start_utc, end_utc,
    added_utc FROM logs, copy`);
  each(`INSERT INTO debriefs SELECT id || n, ${log}, facility_sha256, standard_id, standard, stated, settings, heights,
    antenna_height_ft, engine_version, document_sha256, made_utc FROM debriefs, copy, logs
    WHERE logs.sha256 = log_sha256`);
  each(`INSERT INTO documents SELECT debrief_id || n, sha256, engine_version, json_gz FROM documents, copy`);
  each(`INSERT INTO approaches SELECT debrief_id || n, number, lesson_id || n, ${student}, ${day}, start_utc, facility,
    standard_id, kind, outcome, level, level_low, level_high, score, score_low, score_high, summary
    FROM approaches, copy`);
}
