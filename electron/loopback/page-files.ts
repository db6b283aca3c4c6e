import { readFileSync } from 'node:fs';
import { extname, join, normalize, sep } from 'node:path';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
};

export interface PageFile {
  readonly type: string;
  readonly bytes: Buffer;
}

/** A file of the built page, by the path of a request; null for everything else, also above its folder. */
export function pageFile(folder: string, path: string): PageFile | null {
  const name = normalize(path === '/' ? 'index.html' : path.slice(1));
  const type = TYPES[extname(name)];
  if (type === undefined || name.startsWith('..') || name.startsWith(sep) || name.includes('\0')) return null;
  try {
    return { type, bytes: readFileSync(join(folder, name)) };
  } catch {
    return null;
  }
}
