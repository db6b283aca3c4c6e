import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ROOT, sourceFiles } from './source-files.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'halfdot-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** What the compiler says of a file under core's own settings; empty when it is content. */
function compileAsCore(text: string): string {
  writeFileSync(join(folder, 'file.ts'), text);
  const settings = { extends: join(ROOT, 'core/tsconfig.json'), include: [join(folder, 'file.ts')] };
  writeFileSync(join(folder, 'tsconfig.json'), JSON.stringify(settings));
  try {
    return execFileSync(process.execPath, [join(ROOT, 'node_modules/typescript/bin/tsc'), '-p', folder], {
      encoding: 'utf8',
    });
  } catch (error) {
    return (error as { stdout: string }).stdout;
  }
}

describe("core's compiler settings", () => {
  it('know the language', () => {
    expect(compileAsCore('export const x: number = Math.max(...new Float64Array(3));')).toBe('');
  });

  it('know neither the machine nor the page', () => {
    const said = compileAsCore('export const x = [process.argv, document.title];');
    expect(said).toMatch(/process/);
    expect(said).toMatch(/document/);
  });
});

describe('the sources of core', () => {
  const FORBIDDEN: readonly [what: string, pattern: RegExp][] = [
    ['a clock', /\bnew Date\(\s*\)|(?<!new )\bDate\(\s*\)|\bDate\.now\b|\bperformance\./],
    ['randomness', /\bMath\.random\b/],
    ['the locale of the machine', /\.toLocale|\bnew Intl\.\w+\(\s*(?:\)|undefined)/],
  ];
  const withoutComments = (text: string) => text.replace(/\/\*[\s\S]*?\*\/|\/\/[^\n]*/g, '');

  it.each(FORBIDDEN)('hold no call of %s', (_what, pattern) => {
    const found = sourceFiles('core').filter(({ text }) => pattern.test(withoutComments(text)));
    expect(found.map(({ path }) => path)).toEqual([]);
  });

  it.each([
    'const now = new Date();',
    'const now = Date.now();',
    'Math.random()',
    'x.toLocaleString()',
    'new Intl.NumberFormat()',
  ])('would be told of %s', (text) => {
    expect(FORBIDDEN.some(([, pattern]) => pattern.test(text))).toBe(true);
  });
});
