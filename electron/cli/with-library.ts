import { availableParallelism } from 'node:os';
import { join, resolve } from 'node:path';
import type { Job } from '../../core/log/log.ts';
import type { DebriefPool } from '../library/debrief-pool.ts';
import type { Library } from '../library/library.ts';
import type { Opening } from '../library/open-library.ts';
import { userFolder } from '../services/user-folder.ts';
import { EXIT, type Arguments, type ExitStatus, type Option, type Output } from './command.ts';
import { refuse } from './read-input.ts';

export const LIBRARY_OPTION: Readonly<Record<string, Option>> = {
  library: { value: "the library's folder; the one in your own folder when not said" },
};

/** Everything that the library's commands use of it. Its type alone: the code comes when a command asks for it. */
export type LibraryRoom = typeof import('../library/entry.ts');

/** The folder that is meant by `--library`, or by saying nothing. */
function libraryFolder({ options }: Arguments): string {
  const named = options['library']?.[0];
  return named ? resolve(named) : join(userFolder(process.env, process.platform), 'library');
}

/** Loads the library's code, and turns what it refuses to do into the one sentence of the command. */
export async function inLibraryRoom(
  args: Arguments,
  output: Output,
  work: (room: LibraryRoom, folder: string) => Promise<ExitStatus>,
): Promise<ExitStatus> {
  const room = await import('../library/entry.ts');
  const folder = libraryFolder(args);
  try {
    return await work(room, folder);
  } catch (error) {
    const refusal = room.refusalOf(error, folder);
    if (refusal === null) throw error;
    return refuse(refusal, output);
  }
}

/** The same with the library open; it is closed whatever happens. */
export function withLibrary(
  args: Arguments,
  opening: Opening,
  output: Output,
  work: (library: Library, room: LibraryRoom) => Promise<ExitStatus>,
): Promise<ExitStatus> {
  return inLibraryRoom(args, output, async (room, folder) => {
    const library = await room.openLibrary(folder, opening);
    try {
      return await work(library, room);
    } finally {
      library.close();
    }
  });
}

/** A third thread would mostly wait for the one that writes. Ours. */
const USUAL_WORKERS = 2;

export const WORKERS_OPTION: Readonly<Record<string, Option>> = {
  workers: {
    value: `how many logs are debriefed at a time, 1 to 4; ${USUAL_WORKERS} when not said`,
    oneOf: ['1', '2', '3', '4'],
  },
};

/** Work on so many logs with as many threads as are asked for; null: one at a time is debriefed in this thread. */
export async function withDebriefers(
  { options }: Arguments,
  room: LibraryRoom,
  logs: number,
  work: (pool: DebriefPool | null) => Promise<ExitStatus>,
): Promise<ExitStatus> {
  const asked = Number(options['workers']?.[0] ?? Math.min(USUAL_WORKERS, availableParallelism()));
  const count = Math.min(asked, logs);
  if (count < 2) return work(null);
  const pool = room.debriefersOf(count);
  try {
    return await work(pool);
  } finally {
    await pool.close();
  }
}

/** Work that the first Ctrl-C asks to stop where that is safe; a second one ends the process. */
export async function stoppable(job: Job, work: (job: Job) => Promise<ExitStatus>): Promise<ExitStatus> {
  let stopped = false;
  const stop = () => void (stopped = true);
  process.once('SIGINT', stop);
  try {
    return await work({ progress: (share) => job.progress(share), cancelled: () => stopped });
  } finally {
    process.off('SIGINT', stop);
  }
}

/** A line of how many there are of something. */
export function counted(count: number, one: string, more = `${one}s`): string {
  return `${count} ${count === 1 ? one : more}`;
}

/** Done; or not quite, where logs were lost: `what` says of whom and to what end, after their number. */
export function doneWithout(missing: readonly string[], what: string, output: Output): ExitStatus {
  if (missing.length === 0) return EXIT.done;
  output.message(`halfdot: ${counted(missing.length, 'log')} ${what}: ${missing.join(', ')}.`);
  return EXIT.unusable;
}
