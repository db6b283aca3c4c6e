import { closeSync, fsyncSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';
import { dirname } from 'node:path';

/** Writes a file whole or not at all, and returns once it is on the disk under its name. Throws as the system does. */
export function writeFlushed(path: string, content: Uint8Array): void {
  writeWhole(path, content);
  flushFolder(dirname(path));
}

/** The same but for the name, which is on the disk once the folder is flushed: of many files that is done once. */
export function writeWhole(path: string, content: Uint8Array): void {
  const beside = `${path}.${process.pid}.part`;
  try {
    const file = openSync(beside, 'w');
    try {
      for (let at = 0; at < content.length;) at += writeSync(file, content, at);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    renameSync(beside, path);
  } catch (error) {
    rmSync(beside, { force: true });
    throw error;
  }
}

/** Moves a file or folder whose content is on the disk already, and returns once its new name is there too. */
export function renameFlushed(from: string, to: string): void {
  renameSync(from, to);
  flushFolder(dirname(to));
}

/** Brings what was written to a file by others to the disk. */
export function flushFile(path: string): void {
  const file = openSync(path, 'r+');
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

/** Brings the names in a folder to the disk. */
export function flushFolder(path: string): void {
  // Windows opens no folder as a file, and keeps names by its own journal.
  if (process.platform === 'win32') return;
  const folder = openSync(path, 'r');
  try {
    fsyncSync(folder);
  } finally {
    closeSync(folder);
  }
}
