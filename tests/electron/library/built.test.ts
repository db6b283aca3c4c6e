import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, readFileSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ROOT } from '../../house/source-files.ts';
import { everything, expectWhole, FACILITY, manyLogs, newFolder, SAMPLE } from './some-library.ts';

const HAS_SQLITE = process.getBuiltinModule('node:sqlite' as never) !== undefined;

function run(dist: string, ...words: string[]) {
  return spawnSync(process.execPath, [join(dist, 'halfdot.js'), ...words], { encoding: 'utf8' });
}

describe('the built program', () => {
  it('finds SQLite from dist/, and says in the answer alone what it did', () => {
    const library = join(newFolder(), 'library');
    const words = ['--library', library];
    const said = run(join(ROOT, 'dist'), 'import', SAMPLE, '--facility', FACILITY, ...words);
    expect(said).toMatchObject({ status: 0, stderr: '' });
    expect(said.stdout).toContain('first-approach.csv: kept, 1 approach at Petrelholm ILS 07');
    expect(run(join(ROOT, 'dist'), 'check', ...words)).toMatchObject({ status: 0, stderr: '' });
  });

  it('without node_modules debriefs as ever, and says what the library would need', () => {
    const dist = join(newFolder(), 'dist');
    cpSync(join(ROOT, 'dist'), dist, { recursive: true });
    expect(run(dist, 'debrief', SAMPLE, '--facility', FACILITY)).toMatchObject({ status: 0, stderr: '' });
    const library = join(newFolder(), 'library');
    const said = run(dist, 'import', SAMPLE, '--facility', FACILITY, '--library', library);
    if (HAS_SQLITE) expect(said.status).toBe(0);
    else {
      expect(said).toMatchObject({ status: 2, stdout: '' });
      expect(said.stderr.trim().split('\n')).toEqual([expect.stringContaining('The library needs SQLite')]);
      expect(existsSync(library)).toBe(false);
    }
  });

  it('loads none of the library for another command', () => {
    const dist = join(newFolder(), 'dist');
    cpSync(join(ROOT, 'dist'), dist, { recursive: true });
    const holds = readdirSync(join(dist, 'chunks')).filter((name) =>
      readFileSync(join(dist, 'chunks', name), 'utf8').includes('VACUUM INTO'),
    );
    expect(holds.length).toBeGreaterThan(0);
    for (const name of holds) rmSync(join(dist, 'chunks', name));
    expect(readFileSync(join(dist, 'program.js'), 'latin1')).not.toContain('VACUUM INTO');
    expect(run(dist, 'debrief', SAMPLE, '--facility', FACILITY)).toMatchObject({ status: 0, stderr: '' });
    expect(run(dist, 'help')).toMatchObject({ status: 0, stderr: '' });
  });

  it('imports a folder alike with its threads, without their file, and where that is broken', async () => {
    const logs = manyLogs(6);
    const home = newFolder();
    const dist = join(home, 'dist');
    cpSync(join(ROOT, 'dist'), dist, { recursive: true });
    symlinkSync(join(ROOT, 'node_modules'), join(home, 'node_modules'));
    const imported = async () => {
      const library = join(newFolder(), 'library');
      const said = run(dist, 'import', logs, '--facility', FACILITY, '--library', library);
      expect(said).toMatchObject({ status: 0 });
      await expectWhole(library);
      const { logs: kept, documents } = await everything(library);
      const hashes = documents!.map((row) => (row as { sha256: string }).sha256).sort();
      return {
        said: said.stdout,
        names: kept!.map((row) => (row as { file_name: string }).file_name),
        hashes,
      };
    };
    const threaded = await imported();
    const lines = [1, 2, 3, 4, 5, 6].map((n) => `log-0${n}.csv: kept, 1 approach at Petrelholm ILS 07\n`);
    expect(threaded.said).toBe(`${lines.join('')}6 logs kept, 0 known already, 0 refused.\n`);
    const worker = join(dist, 'debrief-worker.mjs');
    writeFileSync(worker, 'process.exit(1);');
    expect(await imported()).toEqual(threaded);
    rmSync(worker);
    expect(await imported()).toEqual(threaded);
  });
});
