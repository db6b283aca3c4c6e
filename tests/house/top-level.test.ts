import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { ENGINE_VERSION } from '../../core/debrief/engine-version.ts';
import { CAUTIONS } from '../../core/debrief/cautions.ts';
import { ROOT } from './source-files.ts';

const read = (name: string) => readFileSync(join(ROOT, name), 'utf8');

/** Design, section 15, with the README's pictures; behind it, what tools insist on finding there. */
const ROOMS = [
  'README.md',
  'DEVELOPERS.md',
  'package.json',
  'tsconfig.json',
  'electron',
  'renderer',
  'core',
  'docs',
  'samples',
  'tests',
];
const TOOLS = [
  '.ci',
  '.gitignore',
  '.oxlintrc.json',
  '.prettierignore',
  '.prettierrc.json',
  'LICENSE',
  'package-lock.json',
  'vite.config.ts',
  'vitest.config.ts',
];

it('the top level holds the agreed rooms and nothing else', () => {
  const tracked = execFileSync('git', ['ls-files', '-co', '--exclude-standard'], {
    cwd: ROOT,
    encoding: 'utf8',
  });
  const top = new Set(
    tracked
      .trim()
      .split('\n')
      .map((path) => path.split('/')[0]!),
  );
  expect([...top].sort()).toEqual([...ROOMS, ...TOOLS].sort());
});

it('a debrief names the version of the package', () => {
  expect(ENGINE_VERSION).toBe((JSON.parse(read('package.json')) as { version: string }).version);
});

it('the README gives both commands near its top, and every caution', () => {
  const readme = read('README.md');
  const top = readme.split('\n').slice(0, 40).join('\n');
  expect(top).toContain('npm ci && npm run debrief');
  expect(top).toContain('npm ci && npm test');
  expect(read('.ci/run')).toMatch(/^npm ci$/m);
  expect(read('.ci/run')).toMatch(/^npm test/m);
  expect(readme).toMatch(/never for navigation/i);
  expect(readme).toMatch(/not yet validated against recorded receiver needles/i);
  expect(CAUTIONS.join(' ')).toMatch(/never for navigation/i);
});

it('no dependency is locked to a named host', () => {
  expect(read('package-lock.json')).not.toContain('"resolved"');
});
