import { ENGINE_VERSION } from '../../core/debrief/engine-version.ts';
import type { Issue } from '../../core/issue/issue.ts';
import type { Job } from '../../core/log/log.ts';
import type { Library } from '../library/library.ts';
import { EXIT, type Command, type ExitStatus, type Output } from './command.ts';
import { refuse } from './read-input.ts';
import { counted, LIBRARY_OPTION, stoppable, withLibrary, type LibraryRoom } from './with-library.ts';

export const recompute: Command = {
  name: 'recompute',
  usage: '[--library FOLDER]',
  purpose: 'make debriefs of another version of the engine anew, and list what changed',
  options: LIBRARY_OPTION,
  minFiles: 0,
  maxFiles: 0,
  async run(args, output) {
    return withLibrary(args, 'existing', output, (library, room) =>
      stoppable(output.job('Recomputing'), (job) => recomputeAll(library, room, job, output)),
    );
  },
};

async function recomputeAll(
  library: Library,
  room: LibraryRoom,
  job: Job,
  output: Output,
): Promise<ExitStatus> {
  const others = room.otherEngines(library, ENGINE_VERSION);
  let left = 0;
  for (const [i, other] of others.entries()) {
    job.progress(i / others.length);
    await new Promise((resolve) => setImmediate(resolve));
    if (job.cancelled()) {
      output.message(`${i} of ${others.length} debriefs looked at. Stopped; run the same again to go on.`);
      return EXIT.unusable;
    }
    const made = await orRefusal(room, () => room.recompute(library, other, job));
    if (!made.ok) {
      left++;
      refuse(made.refusal, output);
      continue;
    }
    const changes = made.value.length === 0 ? ['nothing changed'] : made.value;
    await output.answer(changes.map((change) => `${other.file_name} at ${other.name}: ${change}\n`).join(''));
  }
  const done = others.length - left;
  await output.answer(`${counted(done, 'debrief')} made anew, ${left} left as they were.\n`);
  return left === 0 ? EXIT.done : EXIT.unusable;
}

/** A log that has gone costs its own debriefs, and not those of the others. */
async function orRefusal<T>(
  room: LibraryRoom,
  work: () => Promise<T>,
): Promise<T | { ok: false; refusal: Issue }> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof room.LibraryRefusal) return { ok: false, refusal: error.issue };
    throw error;
  }
}
