import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ROOT, sourceFiles } from './source-files.ts';

describe('the compiler', () => {
  it('is shown every source and every test: a folder that one project leaves out, another one has', () => {
    const { scripts } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as {
      scripts: { types: string };
    };
    const projects = [...scripts.types.matchAll(/tsc -p (\S+)/g)].map(([, project]) => project!);
    const compiler = join(ROOT, 'node_modules/typescript/bin/tsc');
    const shown = new Set(
      projects.flatMap((project) =>
        execFileSync(process.execPath, [compiler, '-p', project, '--listFilesOnly'], {
          cwd: ROOT,
          encoding: 'utf8',
        }).split('\n'),
      ),
    );
    const all = ['core', 'electron', 'renderer', 'tests'].flatMap((folder) => sourceFiles(folder));
    const unseen = all.map(({ path }) => path).filter((path) => !shown.has(join(ROOT, path)));
    expect(unseen).toEqual([]);
  });
});
