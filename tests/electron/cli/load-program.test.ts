import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { CODE_CACHE, loadProgram } from '../../../electron/cli/load-program.ts';

/** A program that answers with what it was given, and requires a module as the real one does. */
const PROGRAM = `(function (exports, require) {
const { basename } = require('node:path');
exports.main = async (words) => { globalThis.heard = words.map((word) => basename(word)); };
})`;

describe('loading the built program', () => {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'halfdot-program-'));
    writeFileSync(join(folder, 'program.js'), PROGRAM);
  });
  afterEach(() => rmSync(folder, { recursive: true }));

  const heard = async () => {
    await loadProgram(folder).program.main(['debrief', 'logs/flight.csv']);
    return (globalThis as { heard?: unknown }).heard;
  };

  it('runs a program without compiled code beside it', async () => {
    expect(await heard()).toEqual(['debrief', 'flight.csv']);
  });

  it('takes the compiled code that was made from the same program', async () => {
    writeFileSync(join(folder, CODE_CACHE), loadProgram(folder).script.createCachedData());
    expect(loadProgram(folder).script.cachedDataRejected).toBe(false);
    expect(await heard()).toEqual(['debrief', 'flight.csv']);
  });

  it('gives a part that is loaded later the program that runs, and not a second one', async () => {
    writeFileSync(join(folder, 'part.js'), "exports.answer = () => require('./program.js').count();");
    writeFileSync(
      join(folder, 'program.js'),
      `(function (exports, require) {
let count = 0;
exports.count = () => ++count;
exports.main = async () => { count = 6; globalThis.heard = require('./part.js').answer(); };
})`,
    );
    expect(await heard()).toBe(7);
  });

  it('runs the program itself when the compiled code is of another program or none at all', async () => {
    const code = loadProgram(folder).script.createCachedData();
    for (const [i, stale] of [code, Buffer.from('no code'), Buffer.alloc(0)].entries()) {
      // A program that this process has not compiled yet.
      writeFileSync(join(folder, 'program.js'), PROGRAM + ';'.repeat(i + 1));
      writeFileSync(join(folder, CODE_CACHE), stale);
      expect(loadProgram(folder).script.cachedDataRejected).toBe(true);
      expect(await heard()).toEqual(['debrief', 'flight.csv']);
    }
  });
});
