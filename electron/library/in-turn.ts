import { debriefBytes, type DebriefLog } from './debrief-bytes.ts';
import type { DebriefPool } from './debrief-pool.ts';
import type { Library } from './library.ts';
import { sweepLogs } from './pending-logs.ts';
import { keepNow, together, type ToKeep } from './to-keep.ts';

/**
 * Works on logs with a pool (null: in this thread, one after the other), keeps what was made of them in the order of the
 * items, whatever is done first, and gives it in parts: each is kept together when it is asked for, and nothing is when
 * nobody asks any more. `begin` is called some logs ahead. What throws does so at its turn, and nothing after it is kept.
 */
export async function* inTurn<Item, Made>(
  library: Library,
  items: readonly Item[],
  pool: DebriefPool | null,
  begin: (item: Item, debrief: DebriefLog) => Promise<ToKeep<Made>>,
): AsyncGenerator<readonly Made[], void, undefined> {
  // Twice as many as the workers have in hand: a long log holds none up until so many short ones behind it are done.
  const ahead = pool === null ? 1 : 4 * pool.count;
  const debrief = pool?.debrief ?? debriefBytes;
  const begun: Begun<Made>[] = [];
  for (let next = 0; next < items.length || begun.length > 0;) {
    while (begun.length < ahead && next < items.length) begun.push(new Begun(begin(items[next++]!, debrief)));
    await begun[0]!.ends;
    // Lets in what else was answered meanwhile.
    await new Promise((resolve) => setImmediate(resolve));
    yield* inParts(library, readyOnes(begun));
  }
}

class Begun<Made> {
  /** Null until it is debriefed. */
  ready: ToKeep<Made> | null = null;

  constructor(readonly ends: Promise<ToKeep<Made>>) {
    // It is waited for later; until then a failure is nobody's.
    ends.then(
      (ready) => (this.ready = ready),
      () => {},
    );
  }
}

/** Takes away those at the head of the line that are debriefed. */
function readyOnes<Made>(begun: Begun<Made>[]): ToKeep<Made>[] {
  const waits = begun.findIndex(({ ready }) => ready === null);
  return begun.splice(0, waits === -1 ? begun.length : waits).map(({ ready }) => ready!);
}

/** All in one part; where one of them cannot be kept, each in its own: that one takes none along. */
function* inParts<Made>(library: Library, all: readonly ToKeep<Made>[]): Generator<readonly Made[]> {
  const made = all.length > 1 ? orNull(library, together(all)) : null;
  if (made) yield made;
  else for (const one of all) yield [keepNow(library, one)];
}

function orNull<Made>(library: Library, toKeep: ToKeep<Made>): Made | null {
  try {
    return keepNow(library, toKeep);
  } catch {
    // Which one it was is met again. On a full disk the files of the others would leave no room for the first.
    sweepLogs(library);
    return null;
  }
}
