import { randomBytes } from 'node:crypto';
import { readFileSync, statSync } from 'node:fs';
import { basename } from 'node:path';
import type { Output } from '../bridge/calls.ts';
import { Unusable } from '../bridge/gate.ts';
import { systemReason } from '../files/file-problems.ts';

/** Files that the user has named, by tokens: the page can read these and no others. */
export class GivenFiles {
  readonly #paths = new Map<string, string>();

  add(paths: readonly string[]): void {
    for (const path of paths) this.#paths.set(randomBytes(16).toString('hex'), path);
  }

  list(): Output<'given'> {
    return [...this.#paths].map(([token, path]) => ({ token, name: basename(path), bytes: sizeOf(path) }));
  }

  read(token: string): Output<'readGiven'> {
    const path = this.#paths.get(token);
    if (path === undefined) throw new Unusable('No such file was opened.');
    try {
      return { name: basename(path), base64: readFileSync(path).toString('base64') };
    } catch (error) {
      throw new Unusable(`${basename(path)} cannot be read: ${systemReason(error)}.`);
    }
  }
}

function sizeOf(path: string): number {
  try {
    return statSync(path).size;
  } catch {
    return 0;
  }
}
