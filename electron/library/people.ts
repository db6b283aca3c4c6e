import { randomUUID } from 'node:crypto';
import { alphabetically } from './folded-column.ts';
import { from, type Library } from './library.ts';
import { meantBy } from '../bridge/names.ts';
import { refuseLibrary } from './refusal.ts';
import type { Person, Role } from './tables.ts';

/** The person of that name, in whatever spelling; null where there is none, refused where it can be two. */
export function findPerson(library: Library, role: Role, name: string): Person | null {
  const [one, ...others] = peopleNamed(library, role, name);
  if (one && others.length > 0)
    refuseLibrary(
      'library-person',
      `"${name.trim()}" can be ${[one, ...others].map((person) => person.name).join(' or ')}.`,
      'Write the name as it stands there.',
    );
  return one ?? null;
}

/** Everybody whom a name can mean. */
export function peopleNamed(library: Library, role: Role, name: string): Person[] {
  return meantBy(
    library.all(
      from.selectFrom('people').selectAll().where('role', '=', role).orderBy(alphabetically('name')),
    ),
    name,
  );
}

/** The person of that id; null where there is none any more. */
export function personById(library: Library, id: string): Person | null {
  return library.first(from.selectFrom('people').selectAll().where('id', '=', id));
}

/** The person of that name, refused with a sentence where there is none. */
export function personNamed(library: Library, role: Role, name: string): Person {
  return (
    findPerson(library, role, name) ??
    refuseLibrary(
      'library-person',
      `There is no ${role} "${name}" in the library.`,
      '`halfdot list` names them.',
    )
  );
}

/** The id of the person of that name, who is added if need be. Within a `write`. */
export function keepPerson(library: Library, role: Role, name: string): string {
  const known = findPerson(library, role, name);
  if (known) return known.id;
  const person = { id: randomUUID(), role, name: name.trim(), added_utc: new Date().toISOString() };
  library.run(from.insertInto('people').values(person));
  return person.id;
}

/** Another name for a person; refused where it is another's. */
export function renamePerson(library: Library, { id, role }: Person, name: string): void {
  library.write(() => {
    const other = peopleNamed(library, role, name).find((one) => one.id !== id);
    if (other) refuseLibrary('library-person', `There is already a ${role} "${other.name}" in the library.`);
    library.run(from.updateTable('people').set({ name: name.trim() }).where('id', '=', id));
  });
}
