import { ENGINE_VERSION } from '../../core/debrief/engine-version.ts';
import type { Outcome } from '../../core/issue/issue.ts';
import type { Job } from '../../core/log/log.ts';
import type { ToKeep } from '../library/to-keep.ts';
import type { Library } from '../library/library.ts';
import { EXIT, type Arguments, type Command, type ExitStatus, type Output } from './command.ts';
import { refuse } from './read-input.ts';
import {
  counted,
  LIBRARY_OPTION,
  stoppable,
  withDebriefers,
  withLibrary,
  WORKERS_OPTION,
  type LibraryRoom,
} from './with-library.ts';

export const recompute: Command = {
  name: 'recompute',
  usage: '[--library FOLDER]',
  purpose: 'make debriefs of another version of the engine anew, and list what changed',
  options: { ...LIBRARY_OPTION, ...WORKERS_OPTION },
  minFiles: 0,
  maxFiles: 0,
  async run(args, output) {
    return withLibrary(args, 'existing', output, (library, room) =>
      stoppable(output.job('Recomputing'), (job) => recomputeAll(args, library, room, job, output)),
    );
  },
};

async function recomputeAll(
  args: Arguments,
  library: Library,
  room: LibraryRoom,
  job: Job,
  output: Output,
): Promise<ExitStatus> {
  const others = room.otherEngines(library, ENGINE_VERSION);
  let [done, left] = [0, 0];
  return withDebriefers(args, room, others.length, async (pool) => {
    const all = room.inTurn(library, others, pool, (other, debrief) =>
      orRefusal(room, () => room.recompute(library, other, job, debrief)),
    );
    for await (const part of all) {
      for (const made of part) {
        if (!made.ok) {
          left++;
          refuse(made.refusal, output);
        } else await output.answer(changeLines(others[done]!, made.value));
        done++;
      }
      job.progress(done / others.length);
      await new Promise((resolve) => setImmediate(resolve));
      if (job.cancelled() && done < others.length) {
        output.message(
          `${done} of ${others.length} debriefs looked at. Stopped; run the same again to go on.`,
        );
        return EXIT.unusable;
      }
    }
    await output.answer(`${counted(done - left, 'debrief')} made anew, ${left} left as they were.\n`);
    return left === 0 ? EXIT.done : EXIT.unusable;
  });
}

function changeLines(
  { file_name, name }: { readonly file_name: string; readonly name: string },
  changes: readonly string[],
): string {
  const all = changes.length === 0 ? ['nothing changed'] : changes;
  return all.map((change) => `${file_name} at ${name}: ${change}\n`).join('');
}

/** A log that has gone costs its own debriefs, and not those of the others. */
async function orRefusal<T>(
  room: LibraryRoom,
  work: () => Promise<ToKeep<Outcome<T>>>,
): Promise<ToKeep<Outcome<T>>> {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof room.LibraryRefusal)) throw error;
    return room.nothingToKeep<Outcome<T>>({ ok: false, refusal: error.issue, issues: [] });
  }
}
