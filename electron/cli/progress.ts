import type { Job } from '../../core/log/log.ts';

/** Before this a job shows nothing, and afterwards no oftener: a line a second is enough to know that it works. */
const EVERY_MS = 1000;

/** A job that says how far it is, on a line of its own, once it has taken a second and every second after. */
export function progressLine(label: string, say: (line: string) => void, nowMs: () => number): Job {
  let lastMs = nowMs();
  return {
    progress(share) {
      if (nowMs() - lastMs < EVERY_MS) return;
      lastMs = nowMs();
      say(share === null ? `${label} …` : `${label} … ${Math.round(share * 100)} %`);
    },
    // Ctrl-C ends the process itself; nothing has been written by then.
    cancelled: () => false,
  };
}
