import type { Notes } from '../../electron/bridge/calls.ts';
import type { Analyst } from './analyst.ts';
import type { Drafts } from './drafts.ts';
import type { Store } from './store.ts';

/** What keeping something of the user's own needs: it lies in the notes, is read by the worker, and judges. */
export interface OwnParts {
  readonly store: Store;
  readonly analyst: Analyst;
  readonly drafts: Drafts;
  readonly saveNotes: (notes: Notes) => Promise<void>;
  /** Debriefs a log anew. */
  readonly judge: (flightId: string) => Promise<void>;
}
