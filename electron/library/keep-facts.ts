import type { FactRows } from './fact-rows.ts';
import { from, type Library } from './library.ts';

/** Within a `write`, after the approaches that they belong to. */
export function keepFacts(library: Library, debrief_id: string, { facts, measures }: FactRows): void {
  for (const row of facts) library.run(from.insertInto('approach_facts').values({ debrief_id, ...row }));
  if (measures.length > 0)
    library.run(from.insertInto('measures').values(measures.map((row) => ({ debrief_id, ...row }))));
}
