import { describe, expect, it } from 'vitest';
import type { Services } from '../../../electron/bridge/calls.ts';
import { gateTo, Unusable } from '../../../electron/bridge/gate.ts';
import { LARGEST_KEPT_BYTES } from '../../../electron/bridge/kept-limits.ts';
import { NO_NOTES } from '../../../electron/bridge/no-notes.ts';
import { LibraryHost } from '../../../electron/services/library-host.ts';
import { libraryServicesOf } from '../../../electron/services/library-services.ts';
import { progressServicesOf } from '../../../electron/services/progress-services.ts';

const LIBRARY = new LibraryHost('/no/such/folder');
const HASH = 'a'.repeat(64);
const services = (but: Partial<Services> = {}): Services => ({
  about: async () => ({ version: '1', host: 'browser' }),
  samples: async () => [],
  readSample: async ({ file }) => ({ name: file, base64: '' }),
  given: async () => [],
  readGiven: async () => ({ name: '', base64: '' }),
  notes: async () => ({ revision: 0, notes: NO_NOTES }),
  saveNotes: async () => ({ saved: true, revision: 1 }),
  keepLog: async () => ({ kept: true, sha256: HASH }),
  keptLogs: async () => [HASH],
  removeCopies: async () => ({}),
  readKept: async () => ({ name: '', base64: '' }),
  records: async () => ({ text: null }),
  keepRecords: async () => ({ kept: true }),
  ...libraryServicesOf(LIBRARY),
  ...progressServicesOf(LIBRARY),
  ...but,
});

const SCHOOL = {
  measure: 'level',
  filter: { standardKey: null, engineVersion: null, from: null, to: null, mix: {} },
  groupBy: null,
  isNamed: false,
};

const withStandards = (standards: readonly unknown[]) => ({ ...NO_NOTES, standards });

describe('the gate', () => {
  it('calls what the contract names, with a value that it allows', async () => {
    expect(await gateTo(services())('readSample', { file: 'a.csv' })).toEqual({
      ok: true,
      value: { name: 'a.csv', base64: '' },
    });
  });

  it.each(['toString', '__proto__', 'constructor', 'eval', '', 7, null, undefined, { name: 'about' }])(
    'has no call %j',
    async (name) => {
      expect(await gateTo(services())(name, {})).toMatchObject({ ok: false, code: 'unknown-call' });
    },
  );

  it.each([
    ['about', undefined],
    ['about', { more: 1 }],
    ['readSample', {}],
    ['readSample', { file: 7 }],
    ['readSample', { file: 'a', path: '/etc/passwd' }],
    ['readGiven', { token: '' }],
    ['saveNotes', { revision: 0, notes: { ...NO_NOTES, format: 'another' } }],
    ['saveNotes', { revision: 0.5, notes: NO_NOTES }],
    ['saveNotes', { revision: 0, notes: withStandards([{ id: 's', text: 'x'.repeat(50_001) }]) }],
    ['saveNotes', { revision: 0, notes: withStandards([{ id: '', text: '' }]) }],
    [
      'saveNotes',
      { revision: 0, notes: withStandards(Array.from({ length: 1001 }, () => ({ id: 's', text: '' }))) },
    ],
    ['readKept', { sha256: '../notes.json' }],
    ['studentProgress', { studentId: '' }],
    ['schoolProgress', { ...SCHOOL, groupBy: 'name' }],
    ['schoolProgress', { ...SCHOOL, filter: { ...SCHOOL.filter, mix: { student: ['s'] } } }],
    ['schoolProgress', { ...SCHOOL, filter: { ...SCHOOL.filter, from: '1 May' } }],
    ['readKept', { sha256: `${'a'.repeat(61)}/..` }],
    ['readKept', { sha256: 'A'.repeat(64) }],
    ['readKept', { sha256: `${HASH}\n` }],
    ['readKept', { sha256: `${HASH}0` }],
    ['keepLog', { name: 'a.csv', base64: '', sha256: HASH }],
    ['saveNotes', { revision: 0, notes: { ...NO_NOTES, recents: [{ name: 'a', sha256: '..' }] } }],
  ])('refuses a value that the contract does not allow: %s %j', async (name, value) => {
    let wasCalled = false;
    const spy = new Proxy(services(), {
      get: () => () => {
        wasCalled = true;
        return Promise.resolve({});
      },
    });
    expect(await gateTo(spy)(name, value)).toMatchObject({ ok: false, code: 'bad-value' });
    expect(wasCalled).toBe(false);
  });

  it('takes the largest log that is kept, and none that is larger', async () => {
    const sized = (bytes: number) => ({ name: 'a.csv', base64: 'A'.repeat(Math.ceil(bytes / 3) * 4) });
    const gate = gateTo(services());
    expect(await gate('keepLog', sized(LARGEST_KEPT_BYTES))).toMatchObject({ ok: true });
    expect(await gate('keepLog', sized(LARGEST_KEPT_BYTES + 3))).toMatchObject({ code: 'bad-value' });
  });

  it('tells a sentence that is meant for the user, and none of what is not', async () => {
    const unusable = gateTo(services({ readGiven: async () => Promise.reject(new Unusable('It is gone.')) }));
    expect(await unusable('readGiven', { token: 't' })).toEqual({
      ok: false,
      code: 'unusable',
      message: 'It is gone.',
    });
    const broken = gateTo(
      services({ about: async () => Promise.reject(new Error('/home/somebody/secret')) }),
    );
    const answer = await broken('about', {});
    expect(answer).toMatchObject({ ok: false, code: 'fault' });
    expect(JSON.stringify(answer)).not.toContain('secret');
  });

  it('lets nothing out that the contract does not name', async () => {
    const leaking = { version: '1', host: 'browser', home: '/home/somebody' } as never;
    expect(await gateTo(services({ about: async () => leaking }))('about', {})).toMatchObject({
      code: 'fault',
    });
  });
});
