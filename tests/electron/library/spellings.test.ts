import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { EVERY_FLIGHT } from '../../../electron/bridge/every-flight.ts';
import { flightLogs, flightRows } from '../../../electron/library/flight-rows.ts';
import { from } from '../../../electron/library/library.ts';
import { listStudents } from '../../../electron/library/lists.ts';
import { moveLogs } from '../../../electron/library/moves.ts';
import { overviewOf } from '../../../electron/library/overview.ts';
import { keepPerson } from '../../../electron/library/people.ts';
import { ALL_FACILITIES, command, newFolder, opened, SAMPLES } from './some-library.ts';

/** As a reader looks them up: SQLite by itself has José before Jörg, and Łukasz and Özgür after Zoë. */
const IN_ORDER = [
  'anders Ørn',
  'Jorg Teal',
  'Jörg Teal',
  'José Lark',
  'Łukasz Żuraw',
  'Moewe Finch',
  'Özgür Ångström',
  'Rowan Großmüller',
  'Zoë Ünal',
];

/** The samples, a log to each student as far as they go, and the others nobody's. */
let folder = '';
beforeAll(async () => {
  folder = join(newFolder(), 'library');
  expect(await command(folder, 'import', SAMPLES, ...ALL_FACILITIES)).toMatchObject({ status: 0 });
  await opened(folder, (library) => {
    const logs = flightLogs(library, EVERY_FLIGHT);
    for (const [i, name] of IN_ORDER.toReversed().entries()) {
      // As written: to `keepPerson` Jorg and Jörg are one.
      const id = `person-${i}`;
      library.run(from.insertInto('people').values({ id, role: 'student', name, added_utc: '2026' }));
      moveLogs(library, [logs[i]!], { studentId: id, date: null });
    }
    library.write(() => ['Zoë', 'Özgür', 'Ann'].map((name) => keepPerson(library, 'instructor', name)));
  });
}, 60_000);

const PART = { from: 0, count: 500 };
const found = (words: string) =>
  opened(folder, (library) => {
    const filter = { ...EVERY_FLIGHT, words };
    return flightRows(library, filter, { by: 'flown', isDown: true }, PART).rows;
  });
const foundOf = async (words: string) => [...new Set((await found(words)).map(({ student }) => student))];

describe('names with letters beyond ASCII', () => {
  it.each([
    ['Ünal', ['Zoë Ünal']],
    ['ünal', ['Zoë Ünal']],
    ['unal ZOE', ['Zoë Ünal']],
    ['U\u0308NAL', ['Zoë Ünal']],
    ['ångström', ['Özgür Ångström']],
    ['angstrom', ['Özgür Ångström']],
    ['łukasz', ['Łukasz Żuraw']],
    ['lukasz zuraw', ['Łukasz Żuraw']],
    ['grossmuller', ['Rowan Großmüller']],
    ['GROSSMUELLER', ['Rowan Großmüller']],
    ['großmüller', ['Rowan Großmüller']],
    ['möwe', ['Moewe Finch']],
    ['ünal ångström', []],
  ])('are found by "%s"', async (words, students) => expect(await foundOf(words)).toEqual(students));

  it('stand in lists where a reader looks for them', () =>
    opened(folder, (library) => {
      expect(listStudents(library).map(({ student }) => student)).toEqual(IN_ORDER);
      const { students, instructors } = overviewOf(library);
      expect(students.map(({ name }) => name)).toEqual(IN_ORDER);
      expect(instructors).toEqual(['Ann', 'Özgür', 'Zoë']);
      for (const isDown of [false, true]) {
        const { rows } = flightRows(library, EVERY_FLIGHT, { by: 'student', isDown }, PART);
        const names = [...new Set(rows.map(({ student }) => student))];
        expect(names).toEqual([...(isDown ? IN_ORDER.toReversed() : IN_ORDER), null]);
      }
    }));
});

it('a log is found by its file name, and by that with what else is asked', async () => {
  const rows = await found('TIDY-landing.csv');
  expect(rows.length).toBeGreaterThan(0);
  expect(new Set(rows.map(({ fileName }) => fileName))).toEqual(new Set(['tidy-landing.csv']));
  expect(await found('tidy-landing petrelholm')).toEqual(rows);
  expect(await found('tidy-landing choughfell')).toEqual([]);
});
