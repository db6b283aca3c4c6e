import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** Writes every made file into a folder. */
export function writeSamples(made: ReadonlyMap<string, string>, folder: string): void {
  for (const [name, text] of made) {
    const path = join(folder, name);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
  }
}

/** Paths of the files in a folder that are missing or are not, byte for byte, what was made. */
export function differingSamples(made: ReadonlyMap<string, string>, folder: string): string[] {
  return [...made]
    .filter(([name, text]) => !Buffer.from(text).equals(bytesAt(join(folder, name))))
    .map(([name]) => join(folder, name));
}

function bytesAt(path: string): Buffer {
  try {
    return readFileSync(path);
  } catch {
    return Buffer.of();
  }
}
