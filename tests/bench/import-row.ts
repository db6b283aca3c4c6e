import { spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Worker } from 'node:worker_threads';
import { SAMPLE_FACILITIES, sampleFiles } from '../support/samples/sample-files.ts';
import { sideBySide } from './measure.ts';
import { assert, timedRow, type Row } from './rows.ts';

const ROUNDS = 3;
/**
 * Of each sample, told apart by empty lines at their end: 720 logs, a term of 24 students with 30 lessons each. A
 * thread compiles for itself what it runs often, which takes it a second: of 216 logs two threads need 0.7 of the time
 * of one.
 */
const COPIES = 40;

/**
 * The import command on a term of logs with two threads that debrief, over the one thread alone. The budget of 0.67 is half
 * as fast again; 0.5 is out of reach, since reading, packing and writing stay in one thread, and where the machine has
 * two cores it takes its share of them.
 */
export async function importByTwo(folder: string, command: string): Promise<Row> {
  const logs = join(folder, 'logs');
  const count = writeLogs(logs);
  const facilities = [...SAMPLE_FACILITIES].flatMap(([name, facility]) => {
    const path = join(folder, name);
    writeFileSync(path, JSON.stringify(facility));
    return ['--facility', path];
  });
  const library = join(folder, 'imported');
  const importBy = (workers: string) => {
    const words = [command, 'import', logs, ...facilities, '--date', '2026-05-01', '--workers', workers];
    const node = spawnSync(process.execPath, [...words, '--library', library], { encoding: 'utf8' });
    assert(node.stdout.endsWith(`${count} logs kept, 0 known already, 0 refused.\n`), node.stderr);
    rmSync(library, { recursive: true });
  };
  const result = await sideBySide(
    ROUNDS,
    () => importBy('2'),
    () => importBy('1'),
  );
  const row = timedRow('import of 720 logs with two threads that debrief, over one thread', 0.67, result);
  return { ...row, detail: `${row.detail}; bare counting by two threads, over one: ${await twoOverOne()}` };
}

/** Writes them, and says how many they are. */
function writeLogs(folder: string): number {
  mkdirSync(folder);
  const samples = [...sampleFiles()].filter(([name]) => /\.(csv|gpx)$/.test(name));
  for (let i = 0; i < COPIES; i++)
    for (const [name, text] of samples) writeFileSync(join(folder, `${i}-${name}`), text + '\n'.repeat(i));
  return samples.length * COPIES;
}

/** What a second thread is worth here now: where the machine is busy with other work, nothing can be gained by one. */
async function twoOverOne(): Promise<string> {
  const counting = async (threads: number) => {
    const text = `let sum = 0; for (let i = 0; i < ${3e8 / threads}; i++) sum += i % 7;`;
    await Promise.all(Array.from({ length: threads }, () => once(new Worker(text, { eval: true }), 'exit')));
  };
  const { ratio } = await sideBySide(
    ROUNDS,
    () => counting(2),
    () => counting(1),
  );
  return ratio.toFixed(2);
}
