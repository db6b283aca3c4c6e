import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { refused, usable, type Outcome } from '../../core/issue/issue.ts';
import { systemReason } from './file-problems.ts';

/** Writes a file whole or not at all: beside its place first, then moved there. */
export function writeAtomically(path: string, content: string | Uint8Array): Outcome<string> {
  const beside = `${path}.${process.pid}.part`;
  try {
    writeFileSync(beside, content, { flag: 'wx' });
    renameSync(beside, path);
    return usable(path);
  } catch (error) {
    rmSync(beside, { force: true });
    return refused('file-unwritable', `${path} cannot be written: ${systemReason(error)}.`);
  }
}

/** Makes a folder, and those above it; one that is there already will do. */
export function makeFolder(path: string): Outcome<string> {
  try {
    mkdirSync(path, { recursive: true });
    return usable(path);
  } catch (error) {
    return refused('folder-unwritable', `The folder ${path} cannot be made: ${systemReason(error)}.`);
  }
}
