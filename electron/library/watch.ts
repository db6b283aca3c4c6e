import type { Job } from '../../core/log/log.ts';
import { refuseLibrary } from './refusal.ts';

/** Called between two steps of long work with the share done; ends the work, by a refusal, where it is to stop. */
export type Watch = (share: number) => Promise<void>;

/** A watch that tells a job, and lets a signal of the system in between two steps. */
export function watchBy(job: Job): Watch {
  return async (share) => {
    job.progress(share);
    await new Promise((resolve) => setImmediate(resolve));
    if (job.cancelled()) refuseLibrary('stopped', 'Stopped. The library is whole, and nothing was changed.');
  };
}
