import { sql, type RawBuilder } from 'kysely';

/**
 * A column's text as it is searched, as `folded` of `names.ts` makes it. That is called only for what has letters beyond
 * ASCII: a call out of SQLite takes ten times as long as what it does itself. Null stays null.
 */
export function foldedColumn(column: string): RawBuilder<string> {
  const text = sql.ref(column);
  return sql<string>`iif(octet_length(${text}) > length(${text}), folded(${text}), lower(${text}))`;
}

/** What a list of names is sorted by: whatever the accents and capitals, and two that differ in nothing else apart. */
export function alphabetically(column: string): RawBuilder<string> {
  return sql<string>`${foldedColumn(column)} || char(10) || ${sql.ref(column)}`;
}
