import { LEVEL, measureOf } from '../../core/progress/lines.ts';
import type { SchoolMeasure } from '../../core/progress/school/school-input.ts';
import { from, type Library } from './library.ts';

/** Titles of criteria that have several, by the conditions that were stated. */
const TITLES: Readonly<Record<string, string>> = { stability: 'Stability from the gate' };

/** What the approaches of a library can be compared by: every criterion of any standard, and the level first. */
export function schoolMeasures(library: Library): SchoolMeasure[] {
  const criteria = criteriaOf(library).map((id) => ({ id, ...firstOf(library, id) }));
  const inOrder = criteria.toSorted((a, b) => a.place - b.place);
  return [
    LEVEL,
    ...inOrder.map(({ id, title }) => ({
      id,
      title: TITLES[id] ?? title,
      ...measureOf(id),
    })),
  ];
}

/** Each looked up behind the one before, since a list of all would read every row. */
function criteriaOf(library: Library): string[] {
  const ids: string[] = [];
  for (;;) {
    const next = library.first(
      from
        .selectFrom('measures')
        .select('criterion')
        .where('criterion', '>', ids.at(-1) ?? '')
        .orderBy('criterion')
        .limit(1),
    );
    if (next === null) return ids;
    ids.push(next.criterion);
  }
}

function firstOf(library: Library, criterion: string): { title: string; place: number } {
  return library.first(
    from.selectFrom('measures').select(['title', 'place']).where('criterion', '=', criterion).limit(1),
  )!;
}
