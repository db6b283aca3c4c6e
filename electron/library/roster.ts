import { issue, type Issue } from '../../core/issue/issue.ts';
import { alphabetically } from './folded-column.ts';
import { from, type Library } from './library.ts';
import { headerWord, isSameName, nameInOrder } from '../bridge/names.ts';
import { keepPerson } from './people.ts';
import { leftOut, readTable, type TableLine } from './table-file.ts';
import type { Person, Role } from './tables.ts';

type RosterPerson = Pick<Person, 'role' | 'name'>;

export interface Roster {
  readonly people: readonly RosterPerson[];
  /** A refusal where it is no roster, and a warning for each line that was left out. */
  readonly issues: readonly Issue[];
}

/** English, German, French and Spanish, as the columns of a log. */
const COLUMNS = {
  name: ['name', 'fullname', 'pilot', 'nom', 'nombre'],
  first: ['firstname', 'givenname', 'givennames', 'forename', 'vorname', 'prenom'],
  last: [
    'lastname',
    'familyname',
    'surname',
    'nachname',
    'familienname',
    'nomdefamille',
    'apellido',
    'apellidos',
  ],
  role: ['role', 'function', 'rolle', 'funktion', 'fonction', 'funcion'],
};

const ROLES: Readonly<Record<Role, readonly string[]>> = {
  student: [
    'student',
    'studentpilot',
    'pupil',
    'trainee',
    'schuler',
    'flugschuler',
    'eleve',
    'alumno',
    'alumna',
  ],
  instructor: ['instructor', 'flightinstructor', 'fluglehrer', 'fluglehrerin', 'instructeur', 'instructora'],
};

/**
 * The people of a school from a table with a header: a column for the name, or one for the first and one for the last
 * name, and a column for the role, without which everybody is a student.
 */
export function rosterOf(text: string): Roster {
  const table = readTable(
    text,
    COLUMNS,
    (found) => found.has('name') || (found.has('first') && found.has('last')),
  );
  if (!table) return { people: [], issues: [NO_ROSTER] };
  const people: (RosterPerson & { line: number })[] = [];
  const issues = [...table.issues];
  for (const line of table.lines) {
    const person = personOn(line, table.columns.has('first'));
    if ('severity' in person) {
      issues.push(person);
      continue;
    }
    const same = people.find(({ role, name }) => role === person.role && isSameName(name, person.name));
    if (same)
      issues.push(leftOut(line.line, `line ${line.line} names ${person.name} again, as line ${same.line}`));
    else people.push({ ...person, line: line.line });
  }
  issues.sort((a, b) => a.firstLine! - b.firstLine!);
  return { people: people.map(({ role, name }) => ({ role, name })), issues };
}

const NO_ROSTER = issue('refusal', 'roster-no-names', 'No line of it is a header with a column for names.', {
  tip: 'Begin with a line such as "name,role", or "first name,last name,role".',
});

/** The person on a line, or why there is none. Beside a first name, a column "name" is the last one. */
function personOn({ line, text }: TableLine<keyof typeof COLUMNS>, hasFirst: boolean): RosterPerson | Issue {
  const role = roleOf(text('role'));
  const first = text('first');
  const last = text('last') || (hasFirst ? text('name') : '');
  const isInParts = first !== '' || last !== '';
  if (isInParts && (first === '' || last === ''))
    return leftOut(line, `line ${line} has no ${first === '' ? 'first' : 'last'} name`);
  const name = isInParts ? nameInOrder(`${first} ${last}`) : nameInOrder(text('name'));
  if (headerWord(name) === '') return leftOut(line, `line ${line} names nobody`);
  if (role === null)
    return leftOut(line, `"${text('role')}" on line ${line} is no role`, 'Write student or instructor.');
  return { role, name };
}

function roleOf(text: string): Role | null {
  const word = headerWord(text);
  if (word === '') return 'student';
  return (Object.keys(ROLES) as Role[]).find((role) => ROLES[role].includes(word)) ?? null;
}

interface RosterAdded {
  readonly added: readonly RosterPerson[];
  /** Those who were here already, by the name that they are kept under. */
  readonly known: readonly RosterPerson[];
}

/** Adds who is not here yet, in whatever spelling; nobody is removed. */
export function addRoster(library: Library, people: readonly RosterPerson[]): RosterAdded {
  return library.write(() => {
    const added: RosterPerson[] = [];
    const known: RosterPerson[] = [];
    for (const { role, name } of people) {
      const same = namesOf(library, role).find((other) => isSameName(other, name));
      if (same !== undefined) known.push({ role, name: same });
      else {
        keepPerson(library, role, name);
        added.push({ role, name });
      }
    }
    return { added, known };
  });
}

/** The names of everybody of a role. */
export function namesOf(library: Library, role: Role): string[] {
  return library
    .all(from.selectFrom('people').select('name').where('role', '=', role).orderBy(alphabetically('name')))
    .map(({ name }) => name);
}
