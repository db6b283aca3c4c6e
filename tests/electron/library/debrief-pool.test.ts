import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, describe, expect, it } from 'vitest';
import { defineFacility } from '../../../core/analyze.ts';
import { DEFAULT_STANDARD } from '../../../core/standard/standards.ts';
import { NOTHING_STATED } from '../../../core/standard/stated.ts';
import { debriefBytes } from '../../../electron/library/debrief-bytes.ts';
import { debriefersOf, type DebriefPool } from '../../../electron/library/debrief-pool.ts';
import { inTurn } from '../../../electron/library/in-turn.ts';
import { ROOT } from '../../house/source-files.ts';
import { newFolder, SAMPLES } from './some-library.ts';

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

/** A worker that does what the text says with the name of each log, once it has begun to debrief it. */
function workerThat(text: string): URL {
  const path = join(newFolder(), 'worker.mjs');
  writeFileSync(
    path,
    `import { parentPort } from 'node:worker_threads';
await import(${JSON.stringify(WORKER.href)});
parentPort.on('message', ({ log: { name } }) => { ${text} });`,
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
      expect(made).toMatchObject({ ok: true });
    }
    expect(pool.working()).toBe(1);
  });

  it('answer what this one does, to the byte, also with what depends on the geoid and with refusals', async () => {
    const logs = ['first-approach.csv', 'phone.gpx', 'recorder-fault.csv', 'offset-course.csv'].map(log);
    logs.push({ name: 'empty.csv', bytes: Buffer.alloc(0) });
    const pool = poolOf(2, WORKER);
    const made = await Promise.all(logs.map((one) => pool.debrief(one, FACILITIES, ASKED, JOB)));
    expect(pool.working()).toBe(2);
    for (const [i, one] of logs.entries())
      expect(JSON.stringify(made[i])).toBe(JSON.stringify(await debriefBytes(one, FACILITIES, ASKED, JOB)));
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
    const pool = poolOf(1, workerThat("if (name === 'deadly.csv') process.exit(3)"));
    const names = ['a.csv', 'deadly.csv', 'b.csv'];
    const made = await Promise.all(
      names.map((name) => pool.debrief({ ...FIRST, name }, FACILITIES, ASKED, JOB)),
    );
    const files = made.map((one) => (one.ok ? one.value.debriefs[0]!.log.file : one.refusal.message));
    expect(files).toEqual(names);
    expect(pool.working()).toBe(1);
  });

  it('that run out of memory refuse the log, which would end the program here', async () => {
    const thrown = "Object.assign(new Error(), { code: 'ERR_WORKER_OUT_OF_MEMORY' })";
    const pool = poolOf(1, workerThat(`if (name === 'vast.csv') throw ${thrown}`));
    const vast = await pool.debrief({ ...FIRST, name: 'vast.csv' }, FACILITIES, ASKED, JOB);
    expect(vast).toMatchObject({ ok: false, refusal: { code: 'log-too-large' } });
    expect(await pool.debrief(FIRST, FACILITIES, ASKED, JOB)).toMatchObject({ ok: true });
    expect(pool.working()).toBe(1);
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
  /** A pool whose logs take as long as their name says, in ms. */
  const slow: DebriefPool = {
    count: 2,
    working: () => 2,
    debrief: async (one, ...words) => {
      await new Promise((resolve) => setTimeout(resolve, Number(one.name)));
      return debriefBytes({ ...FIRST, name: one.name }, ...words);
    },
    close: async () => {},
  };
  const begin = (written: string[]) => (name: string, debrief: typeof debriefBytes) =>
    debrief({ ...FIRST, name }, FACILITIES, ASKED, JOB).then(() => {
      written.push(name);
      return name;
    });

  it('are written and given in their order, whichever is done first', async () => {
    const names = ['120', '1', '60', '2', '3', '90', '4'];
    const written: string[] = [];
    const given: string[] = [];
    for await (const name of inTurn(names, slow, begin(written))) given.push(name);
    expect(given).toEqual(names);
    expect(written).toEqual(names);
  });

  it('are not written when nobody asks any more, though they are debriefed', async () => {
    const written: string[] = [];
    for await (const name of inTurn(['1', '2', '3', '4', '5'], slow, begin(written))) if (name === '2') break;
    await new Promise((resolve) => setTimeout(resolve, 100));
    expect(written).toEqual(['1', '2']);
  });

  it('throw at their own turn, after those before them', async () => {
    const written: string[] = [];
    const work = (name: string, debrief: typeof debriefBytes) =>
      name === '3' ? Promise.reject(new Error('a full disk')) : begin(written)(name, debrief);
    await expect(async () => {
      for await (const _ of inTurn(['60', '2', '3', '4'], slow, work));
    }).rejects.toThrow('a full disk');
    expect(written).toEqual(['60', '2']);
  });
});
