import { AGREEMENTS } from './migrations/agreements.ts';
import { DRAFTS } from './migrations/drafts.ts';
import { FACTS } from './migrations/facts.ts';
import { MOVES } from './migrations/moves.ts';
import { RECORD } from './migrations/record.ts';

/** How the file comes from one version to the next; version n is the nth. One that was delivered is never changed. */
export const MIGRATIONS: readonly string[] = [RECORD, AGREEMENTS, MOVES, FACTS, DRAFTS];
