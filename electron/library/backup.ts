import { existsSync, mkdirSync, rmSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { flushFile, flushFolder, renameFlushed } from '../files/flushed.ts';
import type { Library } from './library.ts';
import { LogFiles } from './log-files.ts';
import { LIBRARY_FILE } from './open-library.ts';
import { refuseLibrary } from './refusal.ts';
import { sweepParts } from './sweep-parts.ts';
import type { KeptLog } from './tables.ts';
import type { Watch } from './watch.ts';

export interface BackUpMade {
  readonly logs: number;
  /** Names of logs that the library has lost, or that are not whole; a damaged one is copied as it is. */
  readonly missing: readonly string[];
}

/**
 * Copies the library as it is at one moment into a new folder, while others may go on using it. The folder has its
 * name only once everything in it is on the disk. `link`: logs get a second name, where the disk can, and no copy.
 */
export async function backUp(
  library: Library,
  target: string,
  watch: Watch,
  { link = false } = {},
): Promise<BackUpMade> {
  if (existsSync(target))
    refuseLibrary('library-in-the-way', `${target} is there already.`, 'Name a folder that is not.');
  const folder = `${resolve(target)}.${process.pid}.part`;
  sweepParts(dirname(folder), (name) => name === basename(resolve(target)));
  rmSync(folder, { recursive: true, force: true });
  try {
    mkdirSync(folder, { recursive: true });
    const file = join(folder, LIBRARY_FILE);
    library.execute('VACUUM INTO ?', file);
    flushFile(file);
    const logs = logsNamedIn(file, library);
    const made = await copyLogs(library.logFiles, logs, new LogFiles(join(folder, 'logs')), watch, link);
    flushFolder(folder);
    renameFlushed(folder, target);
    return made;
  } catch (error) {
    rmSync(folder, { recursive: true, force: true });
    throw error;
  }
}

export type NamedLog = Pick<KeptLog, 'sha256' | 'file_name'>;

/** The logs of the copy: the library itself may have gained some since, or lost some. */
function logsNamedIn(file: string, library: Library): NamedLog[] {
  library.execute('ATTACH ? AS snapshot', file);
  try {
    return library.answers<NamedLog>('SELECT sha256, file_name FROM snapshot.logs');
  } finally {
    library.execute('DETACH snapshot');
  }
}

async function copyLogs(
  source: LogFiles,
  logs: readonly NamedLog[],
  to: LogFiles,
  watch: Watch,
  link: boolean,
): Promise<BackUpMade> {
  const missing: string[] = [];
  for (const [i, { sha256, file_name }] of logs.entries()) {
    await watch(i / logs.length);
    const isCopied = source.copyTo(to, sha256, { link });
    // Another name of the same file is not worth the reading.
    if (!isCopied || (!link && to.state(sha256) !== 'whole')) missing.push(file_name);
  }
  return { logs: logs.length - missing.length, missing };
}
