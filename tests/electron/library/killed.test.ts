import { spawn } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { LIBRARY_FILE } from '../../../electron/library/open-library.ts';
import { from } from '../../../electron/library/library.ts';
import { ROOT } from '../../house/source-files.ts';
import { seededRandom } from '../../support/flight/random.ts';
import { toFirstVersion } from './first-version.ts';
import { command, expectWhole, FACILITY, libraryOf, manyLogs, newFolder, opened } from './some-library.ts';

/** Of each kind; 20 together, and 300 by `npm run test:long`. */
const ROUNDS = process.env['HALFDOT_LONG']
  ? { import: 100, edit: 60, migration: 60, backup: 30, restore: 50 }
  : { import: 7, edit: 4, migration: 4, backup: 2, restore: 3 };
const TIMEOUT_MS = 30 * 60_000;
const LOGS = 10;

const PROGRAM = join(ROOT, 'dist/halfdot.js');
const EDITOR = join(ROOT, 'dist/edit-library.mjs');

interface Killed {
  readonly said: string;
  /** How long it took; it may have ended before it was killed. */
  readonly ms: number;
  readonly wasKilled: boolean;
}

/** Runs a process and kills it after so many milliseconds; Infinity: lets it end. */
function killedAfter(ms: number, ...words: string[]): Promise<Killed> {
  return new Promise((resolve) => {
    const started = performance.now();
    const child = spawn(process.execPath, words, { stdio: ['ignore', 'pipe', 'ignore'] });
    let said = '';
    child.stdout.on('data', (text: Buffer) => void (said += text.toString()));
    const timer = Number.isFinite(ms) ? setTimeout(() => child.kill('SIGKILL'), ms) : undefined;
    child.on('close', (_, signal) => {
      clearTimeout(timer);
      resolve({ said, ms: performance.now() - started, wasKilled: signal === 'SIGKILL' });
    });
  });
}

/** Moments over the time that the work takes unharmed; in its first third a process is only starting. */
async function moments(rounds: number, seed: string, ...words: string[]): Promise<number[]> {
  const { ms } = await killedAfter(Infinity, ...words);
  const random = seededRandom(seed);
  return Array.from({ length: rounds }, () => ms * (0.3 + 0.75 * random.uniform()));
}

let recorder = '';
let full = '';
beforeAll(async () => {
  recorder = manyLogs(LOGS);
  full = await libraryOf(recorder);
}, TIMEOUT_MS);

function copied(library: string): string {
  const folder = join(newFolder(), 'library');
  mkdirSync(join(folder, 'logs'), { recursive: true });
  copyFileSync(join(library, LIBRARY_FILE), join(folder, LIBRARY_FILE));
  for (const name of readdirSync(join(library, 'logs')))
    copyFileSync(join(library, 'logs', name), join(folder, 'logs', name));
  return folder;
}

/** How many of the rounds were cut off in their work; a test that kills nothing proves nothing. */
let cutOff = 0;
afterAll(() => expect(cutOff).toBeGreaterThan(5));

describe('a library whose process is killed at any moment', () => {
  it(
    'holds every log that an import has told of, none twice, and the same import goes on',
    async () => {
      const words = (library: string) => [
        PROGRAM,
        'import',
        recorder,
        '--facility',
        FACILITY,
        '--library',
        library,
      ];
      let library = join(newFolder(), 'library');
      for (const ms of await moments(
        ROUNDS.import,
        'killed in import',
        ...words(join(newFolder(), 'library')),
      )) {
        const { said, wasKilled } = await killedAfter(ms, ...words(library));
        if (wasKilled) cutOff++;
        if (!existsSync(join(library, LIBRARY_FILE))) continue;
        const { logs } = await expectWhole(library);
        const told = [...said.matchAll(/^(log-\d+\.csv): kept/gm)].map(([, name]) => name);
        expect(logs).toEqual(expect.arrayContaining(told));
        if (logs.length === LOGS) library = join(newFolder(), 'library');
      }
      await killedAfter(Infinity, ...words(library));
      expect((await expectWhole(library)).logs).toHaveLength(LOGS);
    },
    TIMEOUT_MS,
  );

  it(
    'holds every note that was told of, and no log is half moved',
    async () => {
      const library = copied(full);
      const random = seededRandom('killed while edited');
      for (let round = 0; round < ROUNDS.edit; round++) {
        const { said, wasKilled } = await killedAfter(
          150 + 500 * random.uniform(),
          EDITOR,
          library,
          `round ${round}:`,
        );
        if (wasKilled) cutOff++;
        const { logs, notes } = await expectWhole(library);
        expect(logs).toHaveLength(LOGS);
        await expectMovedWhole(library);
        const told = said.split('\n').slice(0, -1);
        const kept = notes.filter((text) => text.startsWith(`round ${round}:`));
        expect(kept).toEqual(expect.arrayContaining(told));
        // The one that was being written may be there; no more than that.
        expect(kept.length - told.length).toBeLessThanOrEqual(1);
      }
    },
    TIMEOUT_MS,
  );

  it(
    'is of the old version or the new after a migration, with everything in it',
    async () => {
      const old = copied(full);
      await toFirstVersion(old);
      const times = await moments(
        ROUNDS.migration,
        'killed in migration',
        PROGRAM,
        'list',
        '--library',
        copied(old),
      );
      for (const ms of times) {
        const library = copied(old);
        const { wasKilled } = await killedAfter(ms, PROGRAM, 'list', '--library', library);
        if (wasKilled) cutOff++;
        expect((await expectWhole(library)).logs).toHaveLength(LOGS);
      }
    },
    TIMEOUT_MS,
  );

  it(
    'is as it was after a backup, which is whole or has no name yet',
    async () => {
      const times = await moments(
        ROUNDS.backup,
        'killed in backup',
        PROGRAM,
        'backup',
        join(newFolder(), 'b'),
        '--library',
        full,
      );
      for (const ms of times) {
        const target = join(newFolder(), 'backup');
        const { wasKilled } = await killedAfter(ms, PROGRAM, 'backup', target, '--library', full);
        if (wasKilled) cutOff++;
        expect((await expectWhole(full)).logs).toHaveLength(LOGS);
        if (existsSync(target)) expect((await expectWhole(target)).logs).toHaveLength(LOGS);
      }
    },
    TIMEOUT_MS,
  );

  it(
    'is what it was or what the backup holds after a restore, and both are still to be had',
    async () => {
      const other = await libraryOf(manyOther());
      const backup = join(newFolder(), 'backup');
      await command(full, 'backup', backup);
      const times = await moments(
        ROUNDS.restore,
        'killed in restore',
        PROGRAM,
        'restore',
        backup,
        '--library',
        copied(other),
      );
      for (const ms of times) {
        const library = copied(other);
        const { wasKilled } = await killedAfter(ms, PROGRAM, 'restore', backup, '--library', library);
        if (wasKilled) cutOff++;
        const { logs } = await expectWhole(library);
        expect([1, LOGS]).toContain(logs.length);
        if (logs.length === LOGS)
          expect((await expectWhole(join(library, 'before-restore-1'))).logs).toHaveLength(1);
        expect((await expectWhole(backup)).logs).toHaveLength(LOGS);
        expect(await command(library, 'restore', backup)).toMatchObject({ status: 0 });
        expect((await expectWhole(library)).logs).toHaveLength(LOGS);
      }
    },
    TIMEOUT_MS,
  );
});

/** One log that is none of the others. */
function manyOther(): string {
  const folder = manyLogs(LOGS + 1);
  for (const name of readdirSync(folder)) if (!name.includes(String(LOGS + 1))) rmSync(join(folder, name));
  expect(readFileSync(join(folder, `log-${LOGS + 1}.csv`)).length).toBeGreaterThan(0);
  return folder;
}

/** Finds every approach in the lesson of its log, with that lesson's student and day. */
async function expectMovedWhole(folder: string): Promise<void> {
  await opened(folder, (library) => {
    const rows = library.all(
      from
        .selectFrom('approaches')
        .innerJoin('debriefs', 'debriefs.id', 'approaches.debrief_id')
        .innerJoin('logs', 'logs.sha256', 'debriefs.log_sha256')
        .innerJoin('lessons', 'lessons.id', 'logs.lesson_id')
        .select(['approaches.lesson_id', 'approaches.student_id', 'approaches.date'])
        .select(['lessons.id', 'lessons.student_id as student', 'lessons.date as day']),
    );
    expect(rows).toHaveLength(LOGS);
    for (const { lesson_id, student_id, date, id, student, day } of rows)
      expect([lesson_id, student_id, date]).toEqual([id, student, day]);
  });
}
