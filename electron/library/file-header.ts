import { closeSync, openSync, readSync } from 'node:fs';
import { MIGRATIONS } from './migrations.ts';
import { refuseLibrary } from './refusal.ts';

/** "HfdL": what tells a library from other SQLite files. */
export const APPLICATION_ID = 0x4866644c;

/** The first hundred bytes of a SQLite file (sqlite.org/fileformat.html, 1.3). */
const HEADER_BYTES = 100;
const VERSION_AT = 60;
const APPLICATION_AT = 68;

/** The version that stands in a file on the disk, which is not opened for it; 0 where it is empty. */
export function versionInFile(path: string): number {
  const header = Buffer.alloc(HEADER_BYTES);
  const file = openSync(path, 'r');
  try {
    if (readSync(file, header, 0, HEADER_BYTES, 0) === 0) return 0;
  } finally {
    closeSync(file);
  }
  if (header.toString('latin1', 0, 15) !== 'SQLite format 3')
    return refuseLibrary(
      'library-damaged',
      `${path} is damaged, or no library at all.`,
      'It was left as it is. `halfdot restore BACKUP` brings a copy back, and keeps it beside.',
    );
  return refuseForeign(path, header.readUInt32BE(APPLICATION_AT), header.readUInt32BE(VERSION_AT));
}

/** The version, where the file is one of ours and not newer than this program. */
export function refuseForeign(path: string, applicationId: number, version: number): number {
  if (version === 0 && applicationId === 0) return version;
  if (applicationId !== APPLICATION_ID)
    return refuseLibrary('library-foreign', `${path} is a SQLite file of another program.`);
  if (version > MIGRATIONS.length)
    return refuseLibrary(
      'library-newer',
      `${path} was written by a newer version of Halfdot, which this one cannot read.`,
      'Use the newer version. The file was not touched.',
    );
  return version;
}
