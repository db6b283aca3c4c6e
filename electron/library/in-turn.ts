import { debriefBytes, type DebriefLog } from './debrief-bytes.ts';
import type { DebriefPool } from './debrief-pool.ts';

/**
 * Works on logs with a pool (null: in this thread, one after the other) and gives what was made of each in the order of
 * the items, whatever is done first. `work` is called some logs ahead; the `debrief` that it is handed returns when the
 * item's turn has come, which is when its outcome is asked for. So what `work` writes after it is written in order, and
 * nothing is when nobody asks any more.
 */
export async function* inTurn<Item, Made>(
  items: readonly Item[],
  pool: DebriefPool | null,
  work: (item: Item, debrief: DebriefLog) => Promise<Made>,
): AsyncGenerator<Made, void, undefined> {
  // Twice as many as can be worked on: a long log holds no worker up until so many short ones behind it are done.
  const ahead = pool === null ? 1 : 2 * pool.count;
  const debrief = pool?.debrief ?? debriefBytes;
  const begun: Begun<Made>[] = [];
  for (const item of items) {
    begun.push(begin(item, debrief, work));
    if (begun.length === ahead) yield await taken(begun.shift()!);
  }
  while (begun.length > 0) yield await taken(begun.shift()!);
}

interface Begun<Made> {
  readonly made: Promise<Made>;
  /** Says that its turn has come. */
  readonly take: () => void;
}

function taken<Made>({ made, take }: Begun<Made>): Promise<Made> {
  take();
  return made;
}

function begin<Item, Made>(
  item: Item,
  debrief: DebriefLog,
  work: (item: Item, debrief: DebriefLog) => Promise<Made>,
): Begun<Made> {
  let take = () => {};
  const turn = new Promise<void>((resolve) => void (take = resolve));
  const made = work(item, async (...words) => {
    const debriefed = await debrief(...words);
    await turn;
    return debriefed;
  });
  // It is waited for later; until then a failure is nobody's.
  made.catch(() => {});
  return { made, take };
}
