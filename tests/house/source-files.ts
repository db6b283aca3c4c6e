import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('../..', import.meta.url));

export interface SourceFile {
  /** From the top of the repository, with forward slashes. */
  readonly path: string;
  readonly text: string;
}

/** All TypeScript files below a folder of the repository. */
export function sourceFiles(folder: string): SourceFile[] {
  return readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .map((name) => `${folder}/${name.replaceAll('\\', '/')}`)
    .filter((path) => /\.tsx?$/.test(path))
    .map((path) => ({ path, text: readFileSync(join(ROOT, path), 'utf8') }));
}

/** What a file imports from within the repository, as paths from its top. */
export function importsOf({ path, text }: SourceFile): string[] {
  const specifiers = text.matchAll(/(?:\bfrom|\bimport)\s*\(?\s*'(\.[^']+)'/g);
  return [...specifiers].map(([, specifier]) => new URL(specifier!, `file:///${path}`).pathname.slice(1));
}
