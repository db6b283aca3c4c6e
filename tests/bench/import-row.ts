import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { debriefersOf } from '../../electron/library/debrief-pool.ts';
import { importLog } from '../../electron/library/import-log.ts';
import { inTurn } from '../../electron/library/in-turn.ts';
import { listLessons } from '../../electron/library/lists.ts';
import { openLibrary } from '../../electron/library/open-library.ts';
import { sampleFiles } from '../support/samples/sample-files.ts';
import { askedOf } from './library-row.ts';
import { sideBySide } from './measure.ts';
import { assert, timedRow, type Row } from './rows.ts';

const ROUNDS = 5;
/** Of each sample, told apart by empty lines at their end: a term of logs, over which a worker's start is soon forgotten. */
const COPIES = 12;
const JOB = { progress: () => {}, cancelled: () => false };

/**
 * The samples imported as the command imports a folder, with two threads that debrief, over this thread alone. The budget
 * of 0.67 is half as fast again; 0.5 is out of reach, since reading, packing and writing stay in this thread, and where
 * the machine has two cores it takes its share of them.
 */
export async function importByTwo(folder: string): Promise<Row> {
  const logs = [...sampleFiles()]
    .filter(([name]) => /\.(csv|gpx)$/.test(name))
    .flatMap(([name, text]) =>
      Array.from({ length: COPIES }, (_, i) => ({ name, bytes: Buffer.from(text + '\n'.repeat(i)) })),
    );
  let libraries = 0;
  const importBy = async (workers: 2 | 0) => {
    const path = join(folder, `imported-${++libraries}`);
    const library = await openLibrary(path, 'create');
    const pool = workers === 0 ? null : debriefersOf(workers);
    try {
      let kept = 0;
      const asked = askedOf();
      const all = inTurn(logs, pool, (log, debrief) => importLog(library, log, asked, JOB, debrief));
      for await (const imported of all) if (imported.ok && imported.value.became === 'kept') kept++;
      assert(kept === logs.length, `${kept} of ${logs.length} logs kept`);
      assert((pool?.working() ?? 0) === workers, 'another number of workers');
      assert(listLessons(library, null).length === 1, 'more lessons than one');
    } finally {
      await pool?.close();
      library.close();
      rmSync(path, { recursive: true });
    }
  };
  const result = await sideBySide(
    ROUNDS,
    () => importBy(2),
    () => importBy(0),
  );
  return timedRow('import of the samples with two threads that debrief, over this one alone', 0.67, result);
}
