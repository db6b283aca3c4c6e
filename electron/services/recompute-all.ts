import { ENGINE_VERSION } from '../../core/debrief/engine-version.ts';
import type { Job } from '../../core/log/log.ts';
import type { Output } from '../bridge/calls.ts';
import type { Library } from '../library/library.ts';
import type { LibraryHost, LibraryRoom } from './library-host.ts';

/** Makes every debrief of another version anew and keeps them, in their order. */
export async function recomputeAll(
  host: LibraryHost,
  library: Library,
  room: LibraryRoom,
  job: Job,
): Promise<Output<'recomputeLibrary'>> {
  const others = room.otherEngines(library, ENGINE_VERSION);
  const pool = host.debriefers(room);
  const changed: Output<'recomputeLibrary'>['changed'] = [];
  const left: string[] = [];
  let done = 0;
  const made = room.inTurn(library, others, pool, (other, debrief) =>
    // A log that was lost costs its own debrief alone.
    room.recompute(library, other, job, debrief).catch((error: unknown) => {
      const refusal = room.refusalOf(error, library.path);
      if (refusal === null) throw error;
      return room.nothingToKeep({ ok: false as const, refusal, issues: [] });
    }),
  );
  for await (const part of made) {
    for (const outcome of part) {
      const { file_name, name } = others[done++]!;
      if (!outcome.ok) left.push(`${file_name}: ${outcome.refusal.message}`);
      else if (outcome.value.length > 0)
        changed.push({ name: `${file_name} at ${name}`, lines: outcome.value });
    }
    job.progress(done / others.length);
    if (job.cancelled() && done < others.length) break;
  }
  return { madeAnew: done - left.length, changed, left, isStopped: done < others.length };
}
