import type { Library } from './library.ts';
import { writeWithLogs } from './pending-logs.ts';

/** What is left to do with a log once it is debriefed. */
export interface ToKeep<Made> {
  /** Hashes of the logs whose files come. */
  readonly logs: readonly string[];
  /** Within a write, and again in another where that one failed; gives what became of the log. */
  readonly keep: () => Made;
}

export function nothingToKeep<Made>(made: Made): ToKeep<Made> {
  return { logs: [], keep: () => made };
}

/** All of them or none, in one commit: what the disk needs for one, it needs once for all. */
export function together<Made>(all: readonly ToKeep<Made>[]): ToKeep<Made[]> {
  return { logs: all.flatMap(({ logs }) => logs), keep: () => all.map(({ keep }) => keep()) };
}

/** Keeps it; what returns from here is on the disk. */
export function keepNow<Made>(library: Library, { logs, keep }: ToKeep<Made>): Made {
  return writeWithLogs(library, logs, keep);
}
