import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Worker } from 'node:worker_threads';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { defineFacility } from '../../../core/analyze.ts';
import type { Debrief } from '../../../core/debrief/debrief.ts';
import { refused } from '../../../core/issue/issue.ts';
import { DEFAULT_STANDARD } from '../../../core/standard/standards.ts';
import { NOTHING_STATED } from '../../../core/standard/stated.ts';
import {
  debriefBytes,
  type DebriefedBytes,
  type DebriefLog,
  type LogBytes,
} from '../../../electron/library/debrief-bytes.ts';
import { debriefersOf, type DebriefPool } from '../../../electron/library/debrief-pool.ts';
import { documentText } from '../../../electron/library/documents.ts';
import { importLog } from '../../../electron/library/import-log.ts';
import { inTurn } from '../../../electron/library/in-turn.ts';
import { from, type Library } from '../../../electron/library/library.ts';
import { sha256Of } from '../../../electron/library/log-files.ts';
import { openLibrary } from '../../../electron/library/open-library.ts';
import { keepPerson } from '../../../electron/library/people.ts';
import { ROOT } from '../../house/source-files.ts';
import { expectWhole, newFolder, SAMPLES } from './some-library.ts';

vi.mock(import('../../../electron/library/debrief-bytes.ts'), { spy: true });

const WORKER = pathToFileURL(join(ROOT, 'dist/debrief-worker.mjs'));
const JOB = { progress: () => {}, cancelled: () => false };
const ASKED = { settings: {}, judging: { standard: DEFAULT_STANDARD, stated: NOTHING_STATED } };
const FACILITIES = [facility('petrelholm-ils-07'), facility('choughfell-ils-32')] as const;

function facility(name: string) {
  const defined = defineFacility(readFileSync(join(SAMPLES, `${name}.json`), 'utf8'), name);
  if (!defined.ok) throw new Error(defined.refusal.message);
  return defined.value;
}

const log = (name: string) => ({ name, bytes: readFileSync(join(SAMPLES, name)) });
const FIRST = log('first-approach.csv');

const debriefsOf = ({ documents }: DebriefedBytes) =>
  documents.map(({ sha256, json_gz }) => JSON.parse(documentText(sha256, json_gz)) as Debrief);

/** A worker that does what the text says with the name of each log, once it has begun to debrief it. */
function workerThat(text: string): URL {
  const path = join(newFolder(), 'worker.mjs');
  writeFileSync(
    path,
    `import { parentPort } from 'node:worker_threads';
const names = [];
const say = parentPort.postMessage.bind(parentPort);
parentPort.postMessage = (answer) => {
  const [name] = names;
  ${text}
  if ('outcome' in answer) names.shift();
  say(answer);
};
await import(${JSON.stringify(WORKER.href)});
parentPort.on('message', ({ log: { name } }) => void names.push(name));`,
  );
  return pathToFileURL(path);
}

const pools: DebriefPool[] = [];
afterEach(() => Promise.all(pools.splice(0).map((pool) => pool.close())));

function poolOf(count: number, file: URL | null): DebriefPool {
  const pool = debriefersOf(count, file);
  pools.push(pool);
  return pool;
}

describe('threads that debrief', () => {
  it('are handed of an import’s asking what they need, and not its rule', async () => {
    const pool = poolOf(1, WORKER);
    const asked = { ...ASKED, student: null, date: null, rule: () => null };
    for (let i = 0; i < 12; i++) {
      const made = await pool.debrief(FIRST, FACILITIES, asked, JOB);
      // A log that is not to be kept is not packed.
      expect(made).toMatchObject({ ok: true, value: { packedLog: null } });
    }
    expect(pool.working()).toBe(1);
  });

  it('answer what this one does, to the byte, also with what depends on the geoid and with refusals', async () => {
    const logs = ['first-approach.csv', 'phone.gpx', 'recorder-fault.csv', 'offset-course.csv'].map(log);
    logs.push({ name: 'empty.csv', bytes: Buffer.alloc(0) });
    const pool = poolOf(2, WORKER);
    const asked = { ...ASKED, packsLog: true };
    const made = await Promise.all(logs.map((one) => pool.debrief(one, FACILITIES, asked, JOB)));
    expect(pool.working()).toBe(2);
    for (const [i, one] of logs.entries())
      // What crosses threads is no Buffer any more.
      expect(made[i]).toEqual(structuredClone(await debriefBytes(one, FACILITIES, asked, JOB)));
    expect(made.map(({ ok }) => ok)).toEqual([true, true, true, true, false]);
  });

  it('tell how far they are, and stop where the job says so', async () => {
    const shares: (number | null)[] = [];
    const bytes = Buffer.concat(Array.from({ length: 60 }, () => FIRST.bytes));
    const job = { progress: (share: number | null) => void shares.push(share), cancelled: () => false };
    await poolOf(1, WORKER).debrief({ name: 'long.csv', bytes }, FACILITIES, ASKED, job);
    expect(shares.length).toBeGreaterThan(3);
    const stopped = await poolOf(1, WORKER).debrief({ name: 'long.csv', bytes }, FACILITIES, ASKED, {
      ...JOB,
      cancelled: () => true,
    });
    expect(stopped).toMatchObject({ ok: false, refusal: { code: 'cancelled' } });
  });

  it.each([
    ['is not there', () => null],
    ['cannot be loaded', () => pathToFileURL(join(newFolder(), 'none.mjs'))],
    ['fails at every log', () => workerThat("throw new Error('a fault of ours')")],
  ])('leave the work to this one where their file %s', async (_, file) => {
    const pool = poolOf(2, file());
    const made = await Promise.all([1, 2, 3, 4, 5, 6].map(() => pool.debrief(FIRST, FACILITIES, ASKED, JOB)));
    for (const one of made) expect(one).toMatchObject({ ok: true, value: { log: { kind: 'csv' } } });
    expect(pool.working()).toBe(0);
  });

  it('that die in the middle of a log cost no log: it is debriefed here, and the others by another', async () => {
    const pool = poolOf(1, workerThat("if (name === 'deadly.csv') process.exit(3);"));
    const names = ['a.csv', 'deadly.csv', 'b.csv', 'c.csv'];
    vi.mocked(debriefBytes).mockClear();
    const made = await Promise.all(
      names.map((name) => pool.debrief({ ...FIRST, name }, FACILITIES, ASKED, JOB)),
    );
    const files = made.map((one) => (one.ok ? debriefsOf(one.value)[0]!.log.file : one.refusal.message));
    expect(files).toEqual(names);
    expect(vi.mocked(debriefBytes).mock.calls.map(([{ name }]) => name)).toEqual(['deadly.csv']);
    expect(pool.working()).toBe(1);
  });

  it('that run out of memory refuse the log, which would end the program here, and no other', async () => {
    const thrown = "Object.assign(new Error(), { code: 'ERR_WORKER_OUT_OF_MEMORY' })";
    const pool = poolOf(1, workerThat(`if (name === 'vast.csv') throw ${thrown};`));
    const [vast, ...others] = await Promise.all(
      ['vast.csv', 'a.csv', 'b.csv'].map((name) => pool.debrief({ ...FIRST, name }, FACILITIES, ASKED, JOB)),
    );
    expect(vast).toMatchObject({ ok: false, refusal: { code: 'log-too-large' } });
    for (const other of others) expect(other).toMatchObject({ ok: true });
    expect(pool.working()).toBe(1);
  });

  it('have two logs each at a time, and answer one after the other', async () => {
    const asked = vi.spyOn(Worker.prototype, 'postMessage');
    const pool = poolOf(1, WORKER);
    // The first takes ten times as long as the others.
    const names = ['from-above.csv', 'first-approach.csv', 'tidy-landing.csv'];
    const made = names.map((name) => pool.debrief(log(name), FACILITIES, ASKED, JOB));
    expect(asked).toHaveBeenCalledTimes(2);
    const all = await Promise.all(made);
    expect(all.map((one) => one.ok && debriefsOf(one.value)[0]!.log.file)).toEqual(names);
    expect(asked).toHaveBeenCalledTimes(3);
    asked.mockRestore();
  });

  it('that are closed refuse what they have, and what waits for them', async () => {
    const pool = poolOf(1, workerThat('for (;;);'));
    const all = [1, 2, 3].map(() => pool.debrief(FIRST, FACILITIES, ASKED, JOB));
    await pool.close();
    for (const made of await Promise.all(all))
      expect(made).toMatchObject({ ok: false, refusal: { code: 'stopped' } });
  });
});

describe('logs in turn', () => {
  /** A pool that answers those logs that it is told of, in this order; others it never does. */
  function poolThatAnswers(...order: string[]): DebriefPool & { answer(name: string): void } {
    const asked = new Map<string | undefined, () => void>();
    return {
      count: 2,
      answer: (name) => asked.get(name)!(),
      working: () => 2,
      debrief: async ({ name }) => {
        await new Promise<void>((resolve) => {
          asked.set(name, resolve);
          while (asked.has(order[0])) asked.get(order.shift())!();
        });
        return refused('none', 'Nothing is made of it.');
      },
      close: async () => {},
    };
  }
  /** Adds a student of the log's name; one that is called `bad` is added and then fails. */
  const begin =
    (bad = '') =>
    async (name: string, debrief: DebriefLog) => {
      await debrief({ ...FIRST, name }, FACILITIES, ASKED, JOB);
      const keep = () => {
        keepPerson(library, 'student', name);
        if (name === bad) throw new Error(`${name} fails`);
        return name;
      };
      return { logs: [sha256Of(name)], keep };
    };
  const keptIn = () =>
    library.answers<{ name: string }>('SELECT name FROM people ORDER BY rowid').map(({ name }) => name);

  const NAMES = ['a', 'b', 'c', 'd', 'e', 'f'];
  let library: Library;
  beforeEach(async () => void (library = await openLibrary(join(newFolder(), 'library'), 'create')));
  afterEach(() => library.close());

  it('are kept and given in their order, whichever is done first', async () => {
    const given: string[] = [];
    const pool = poolThatAnswers('b', 'd', 'a', 'e', 'c', 'f');
    for await (const part of inTurn(library, NAMES, pool, begin())) given.push(...part);
    expect(given).toEqual(NAMES);
    expect(keptIn()).toEqual(NAMES);
  });

  it('are kept in two commits, of their announcement and of all else, where they are ready together', async () => {
    const write = vi.spyOn(library, 'write');
    const flush = vi.spyOn(library.logFiles, 'flush').mockImplementation(() => {
      // Before the commit, for which the announcement is taken back.
      expect(library.all(from.selectFrom('pending_logs').selectAll())).toHaveLength(3);
    });
    const all = inTurn(library, NAMES, poolThatAnswers('b', 'c', 'a'), begin());
    expect(await all.next()).toEqual({ done: false, value: ['a', 'b', 'c'] });
    expect(write).toHaveBeenCalledTimes(2);
    expect(flush).toHaveBeenCalledTimes(1);
    expect(library.all(from.selectFrom('pending_logs').selectAll())).toEqual([]);
  });

  it('are not kept when nobody asks any more, though they are debriefed', async () => {
    const pool = poolThatAnswers('b', 'a');
    const all = inTurn(library, NAMES, pool, begin());
    expect(await all.next()).toEqual({ done: false, value: ['a', 'b'] });
    pool.answer('c');
    await all.return();
    expect(keptIn()).toEqual(['a', 'b']);
  });

  it('throw at their own turn, after those before them', async () => {
    const given: string[] = [];
    const work = (name: string, debrief: DebriefLog) =>
      name === 'c' ? Promise.reject(new Error('c fails')) : begin()(name, debrief);
    await expect(async () => {
      const all = inTurn(library, NAMES, poolThatAnswers('b', 'd', 'a'), work);
      for await (const part of all) given.push(...part);
    }).rejects.toThrow('c fails');
    expect(given).toEqual(['a', 'b']);
    expect(keptIn()).toEqual(given);
  });

  it('that cannot be kept take along none of those that were ready with them', async () => {
    const given: string[] = [];
    await expect(async () => {
      const all = inTurn(library, NAMES, poolThatAnswers('b', 'c', 'd', 'a'), begin('c'));
      for await (const part of all) given.push(...part);
    }).rejects.toThrow('c fails');
    expect(given).toEqual(['a', 'b']);
    expect(keptIn()).toEqual(given);
  });

  it('that could not be kept together leave no file while each is kept alone: it takes room on a full disk', async () => {
    const there: string[][] = [];
    const work = async (name: string, debrief: DebriefLog) => {
      const { logs, keep } = await begin('b')(name, debrief);
      const put = () => {
        there.push(library.logFiles.list());
        library.logFiles.put(sha256Of(name), Buffer.from(name));
        return keep();
      };
      return { logs, keep: put };
    };
    await expect(async () => {
      for await (const _ of inTurn(library, NAMES, poolThatAnswers('b', 'a'), work));
    }).rejects.toThrow('b fails');
    const a = sha256Of('a');
    expect(there).toEqual([[], [a], [], [a]]);
  });

  it('of which one is refused and two are the same are each told of, the good ones kept', async () => {
    const pool = poolOf(2, WORKER);
    const logs = [
      { ...log('from-above.csv'), name: 'long.csv' },
      { name: 'empty.csv', bytes: Buffer.alloc(0) },
      FIRST,
      { ...FIRST, name: 'again.csv' },
    ];
    const asked = { ...ASKED, facilities: FACILITIES, student: 'Rowan Teal', date: '2026-05-01' };
    const given: string[] = [];
    const work = (one: LogBytes, debrief: DebriefLog) => importLog(library, one, asked, JOB, debrief);
    for await (const part of inTurn(library, logs, pool, work))
      given.push(...part.map((made) => (made.ok ? made.value.became : made.refusal.code)));
    expect(given).toEqual(['kept', 'file-empty', 'kept', 'known']);
    expect((await expectWhole(library.folder)).logs).toEqual(['first-approach.csv', 'long.csv']);
  });
});
