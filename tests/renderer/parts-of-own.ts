import { vi } from 'vitest';
import type { Notes } from '../../electron/bridge/calls.ts';
import type { Analyst } from '../../renderer/state/analyst.ts';
import { Drafts } from '../../renderer/state/drafts.ts';
import { Store } from '../../renderer/state/store.ts';
import { readingOf } from '../../renderer/worker/facility-reading.ts';
import type { JobInput } from '../../renderer/worker/protocol.ts';
import { standardReading } from '../../renderer/worker/read-standard.ts';

/** The worker's own reading, without the worker. */
const DOING = {
  standards: ({ standards }: JobInput<'standards'>) => standards.map(standardReading),
  facilities: ({ facilities }: JobInput<'facilities'>) => facilities.map((text) => readingOf(text, 2026)),
  // Every log was flown to those that say so.
  fit: ({ facilities }: JobInput<'fit'>) =>
    facilities.filter(({ text }) => text.includes('Flown to')).map(({ id }) => id),
};
const analyst = {
  start: <J extends keyof typeof DOING>(job: J, input: JobInput<J>) => ({
    done: Promise.resolve({ kind: 'done', value: DOING[job](input as never) }),
    cancel: () => {},
  }),
} as unknown as Analyst;

/** What keeping something of the user's own needs, with notes that are kept in the state alone. */
export function partsOfOwn() {
  const store = new Store();
  const judge = vi.fn<(flightId: string) => Promise<void>>(async () => {});
  const saveNotes = vi.fn(async (notes: Notes) => store.dispatch({ do: 'notes', notes }));
  return { store, analyst, judge, saveNotes, drafts: new Drafts(store, saveNotes) };
}
