import type { FactRows } from './fact-rows.ts';
import { from, type Library } from './library.ts';

/** Within a `write`, after the approaches that they belong to. */
export function keepFacts(library: Library, debriefId: string, all: readonly FactRows[]): void {
  for (const { number, facts, measures } of all) {
    const { id: approach_id } = library.first(
      from
        .selectFrom('approaches')
        .select('id')
        .where('debrief_id', '=', debriefId)
        .where('number', '=', number),
    )!;
    library.run(from.insertInto('approach_facts').values({ approach_id, ...facts }));
    if (measures.length > 0)
      library.run(from.insertInto('measures').values(measures.map((row) => ({ approach_id, ...row }))));
  }
}
