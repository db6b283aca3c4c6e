import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Notes } from '../../../electron/bridge/calls.ts';
import { gateTo } from '../../../electron/bridge/gate.ts';
import { NO_NOTES } from '../../../electron/bridge/no-notes.ts';
import { GivenFiles } from '../../../electron/services/given-files.ts';
import { LibraryHost } from '../../../electron/services/library-host.ts';
import { Samples } from '../../../electron/services/samples.ts';
import { servicesOf } from '../../../electron/services/services.ts';

let userFolder: string;
beforeEach(() => {
  userFolder = mkdtempSync(join(tmpdir(), 'halfdot-recents-'));
});
afterEach(() => rmSync(userFolder, { recursive: true, force: true }));

/** A host as both are built, asked through the gate as a page asks it. */
function host() {
  const gate = gateTo(
    servicesOf('browser', {
      samples: new Samples('samples'),
      given: new GivenFiles(),
      userFolder,
      library: new LibraryHost(join(userFolder, 'library')),
    }),
  );
  return async (name: string, value: unknown) => {
    const answer = await gate(name, value);
    return answer.ok ? answer.value : answer;
  };
}

const hashOf = (text: string) => createHash('sha256').update(text).digest('hex');
const base64 = (text: string) => Buffer.from(text).toString('base64');
const naming = (...texts: string[]): Notes => ({
  ...NO_NOTES,
  recents: texts.map((text) => ({ name: `${text}.csv`, sha256: hashOf(text) })),
});
const logs = () => readdirSync(join(userFolder, 'logs')).toSorted();
const copyOf = (text: string) => join(userFolder, 'logs', `${hashOf(text)}.gz`);

/** A host that keeps a copy of each of these. */
async function keeping(...texts: string[]) {
  const ask = host();
  await ask('saveNotes', { revision: 0, notes: naming(...texts) });
  for (const text of texts)
    expect(await ask('keepLog', { name: 'x', base64: base64(text) })).toEqual({
      kept: true,
      sha256: hashOf(text),
    });
  return ask;
}

describe('the copies of logs opened lately', () => {
  it('are read again by another host as they were, under the name that the notes have', async () => {
    await keeping('one', 'two');
    const other = host();
    expect(await other('readKept', { sha256: hashOf('two') })).toEqual({
      name: 'two.csv',
      base64: base64('two'),
    });
    expect(new Set((await other('keptLogs', {})) as string[])).toEqual(
      new Set([hashOf('one'), hashOf('two')]),
    );
    expect(logs()).toEqual([`${hashOf('one')}.gz`, `${hashOf('two')}.gz`].toSorted());
  });

  it('are none before there were any', async () => {
    expect(await host()('keptLogs', {})).toEqual([]);
  });

  it('are kept of what the notes name, and of nothing else', async () => {
    const ask = await keeping('one');
    expect(await ask('keepLog', { name: 'x', base64: base64('stranger') })).toMatchObject({ kept: false });
    expect(logs()).toEqual([`${hashOf('one')}.gz`]);
  });

  it('go once notes were kept that name them no more, and not when those could not be kept', async () => {
    const ask = await keeping('one', 'two');
    expect(await ask('saveNotes', { revision: 0, notes: naming('one') })).toMatchObject({ saved: false });
    expect(logs()).toHaveLength(2);
    expect(await ask('saveNotes', { revision: 1, notes: naming('one') })).toMatchObject({ saved: true });
    expect(logs()).toEqual([`${hashOf('one')}.gz`]);
    expect(await ask('readKept', { sha256: hashOf('two') })).toMatchObject({
      code: 'unusable',
      message: expect.stringContaining('not there any more') as string,
    });
  });

  it('stay when the notes that named them could not be read, and all go when all are forgotten', async () => {
    await keeping('one', 'two');
    writeFileSync(join(userFolder, 'notes.json'), 'spoilt');
    const ask = host();
    await ask('saveNotes', { revision: 0, notes: naming('three') });
    expect(logs()).toHaveLength(2);
    writeFileSync(`${copyOf('four')}.77.part`, 'left over by a writing that was cut off');
    writeFileSync(join(userFolder, 'logs', 'mine.txt'), 'not ours');
    expect(await ask('removeCopies', {})).toEqual({});
    expect(logs()).toHaveLength(4);
    await ask('saveNotes', { revision: 1, notes: NO_NOTES });
    expect(logs()).toHaveLength(4);
    await ask('removeCopies', {});
    expect(logs()).toEqual(['mine.txt']);
  });

  it('that no list named stay when the only log of the list is taken off it', async () => {
    await keeping('one', 'two');
    writeFileSync(join(userFolder, 'notes.json'), 'spoilt');
    const ask = host();
    await ask('saveNotes', { revision: 0, notes: naming('three') });
    await ask('keepLog', { name: 'x', base64: base64('three') });
    await ask('saveNotes', { revision: 1, notes: NO_NOTES });
    expect(logs()).toEqual([`${hashOf('one')}.gz`, `${hashOf('two')}.gz`].toSorted());
  });

  it('that are not what was kept are refused, and healed by opening the file itself', async () => {
    const ask = await keeping('one', 'two', 'three');
    writeFileSync(copyOf('one'), gzipSync('something else'));
    writeFileSync(copyOf('two'), 'no gzip at all');
    writeFileSync(copyOf('three'), gzipSync(Buffer.alloc(50_000_000)));
    for (const text of ['one', 'two', 'three'])
      expect(await ask('readKept', { sha256: hashOf(text) })).toMatchObject({
        code: 'unusable',
        message: expect.stringContaining('damaged') as string,
      });
    await ask('keepLog', { name: 'x', base64: base64('one') });
    expect(await ask('readKept', { sha256: hashOf('one') })).toMatchObject({ base64: base64('one') });
  });

  it('are kept whole by two hosts that keep the same at once', async () => {
    const ask = await keeping('one');
    const other = host();
    const text = 'a line of a log\n'.repeat(100_000);
    await ask('saveNotes', { revision: 1, notes: naming('one', text) });
    const answers = await Promise.all(
      [ask, other, ask, other].map((asked) => asked('keepLog', { name: 'x', base64: base64(text) })),
    );
    expect(answers).toEqual(Array.from({ length: 4 }, () => ({ kept: true, sha256: hashOf(text) })));
    expect(await other('readKept', { sha256: hashOf(text) })).toMatchObject({ base64: base64(text) });
    expect(logs()).toHaveLength(2);
  });

  it('that cannot be written are said to be so, and nothing of them stays', async () => {
    const ask = await keeping('one');
    rmSync(join(userFolder, 'logs'), { recursive: true });
    writeFileSync(join(userFolder, 'logs'), 'a file in the way');
    expect(await ask('keepLog', { name: 'x', base64: base64('one') })).toMatchObject({
      kept: false,
      why: expect.stringContaining('cannot be made') as string,
    });
    rmSync(join(userFolder, 'logs'));
    mkdirSync(copyOf('one'), { recursive: true });
    expect(await ask('keepLog', { name: 'x', base64: base64('one') })).toMatchObject({
      kept: false,
      why: expect.stringContaining('cannot be written') as string,
    });
    expect(logs()).toEqual([`${hashOf('one')}.gz`]);
  });
});
