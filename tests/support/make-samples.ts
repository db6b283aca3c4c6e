import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { sampleFiles } from './samples/sample-files.ts';

/**
 * Makes samples/, or with `--verify` checks that it holds what the generator makes and names each file that differs.
 * Run from the project's folder.
 */
function main(verify: boolean): number {
  const differing: string[] = [];
  for (const [name, text] of sampleFiles()) {
    const path = join('samples', name);
    if (verify) {
      if (textAt(path) !== text) differing.push(path);
    } else {
      mkdirSync(dirname(path), { recursive: true });
      writeFileSync(path, text);
    }
  }
  for (const path of differing) console.error(`${path} differs from what the generator makes`);
  return differing.length > 0 ? 1 : 0;
}

function textAt(path: string): string | null {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return null;
  }
}

process.exitCode = main(process.argv.includes('--verify'));
