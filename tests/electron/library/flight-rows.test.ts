import { beforeAll, describe, expect, it } from 'vitest';
import { EVERY_FLIGHT } from '../../../electron/bridge/every-flight.ts';
import type { FlightFilter, FlightOrder } from '../../../electron/bridge/library-calls.ts';
import { flightLogs, flightRows, logsWithoutApproach } from '../../../electron/library/flight-rows.ts';
import { listApproaches } from '../../../electron/library/lists.ts';
import { moveLogs } from '../../../electron/library/moves.ts';
import { keepPerson } from '../../../electron/library/people.ts';
import { ALL_FACILITIES, command, newFolder, opened, SAMPLES } from './some-library.ts';
import { join } from 'node:path';
import { writeFileSync } from 'node:fs';

/** Every sample flight, as a student's; one more without an approach, and one that is nobody's. */
const STATED = ['--target-airspeed', '90', '--runway', 'seen'];
let folder = '';
beforeAll(async () => {
  folder = join(newFolder(), 'library');
  const facilities = ALL_FACILITIES;
  expect(
    await command(folder, 'import', SAMPLES, ...facilities, '--student', 'Rowan Teal', ...STATED),
  ).toMatchObject({
    status: 0,
  });
  const bare = join(newFolder(), 'taxied.csv');
  const rows = Array.from(
    { length: 60 },
    (_, s) => `2026-05-03T08:00:${String(s).padStart(2, '0')}Z,10.0,20.${String(1000 + s)},500`,
  );
  writeFileSync(bare, ['UTC,Latitude,Longitude,GNSS Altitude (ft)', ...rows].join('\n'));
  expect(await command(folder, 'import', bare, ...facilities, '--student', 'Hazel Wren')).toMatchObject({
    status: 0,
  });
  await opened(folder, (library) => {
    const id = library.write(() => keepPerson(library, 'student', 'Hazel Wren'));
    const logs = flightLogs(library, { ...EVERY_FLIGHT, facility: 'Choughfell ILS 32' });
    moveLogs(library, logs, { studentId: id, date: null });
    moveLogs(library, flightLogs(library, { ...EVERY_FLIGHT, words: 'circled' }), {
      studentId: null,
      date: null,
    });
  });
});

const NEWEST: FlightOrder = { by: 'flown', isDown: true };
const ALL = { from: 0, count: 500 };

const rowsOf = (filter: Partial<FlightFilter>, order = NEWEST, part = ALL) =>
  opened(folder, (library) => flightRows(library, { ...EVERY_FLIGHT, ...filter }, order, part));

describe('the list of flights', () => {
  it('holds what the command lists, each once', () =>
    opened(folder, (library) => {
      const { total, rows } = flightRows(library, EVERY_FLIGHT, { by: 'flown', isDown: false }, ALL);
      const listed = listApproaches(library, null);
      expect(total).toBe(listed.length);
      expect(rows.map(({ startUtc, summary }) => [startUtc, summary]).sort()).toEqual(
        listed.map(({ startUtc, summary }) => [startUtc, summary]).sort(),
      );
      expect(new Set(rows.map(({ debriefId, number }) => `${debriefId} ${number}`)).size).toBe(total);
    }));

  it('is the same whole and in parts', async () => {
    for (const by of ['flown', 'student', 'facility', 'outcome', 'level', 'score'] as const)
      for (const isDown of [true, false]) {
        const whole = (await rowsOf({}, { by, isDown })).rows;
        const parts: typeof whole = [];
        for (let from = 0; from < whole.length; from += 3)
          parts.push(...(await rowsOf({}, { by, isDown }, { from, count: 3 })).rows);
        expect(parts).toEqual(whole);
      }
  });

  it.each(['student', 'facility', 'outcome', 'level', 'score'] as const)(
    'is in the order of the %s, with what is not known at the end',
    async (by) => {
      for (const isDown of [true, false]) {
        const values = (await rowsOf({}, { by, isDown })).rows.map((row) => row[by]);
        const known = values.filter((value) => value !== null);
        expect(values.slice(known.length).every((value) => value === null)).toBe(true);
        const sorted = known.toSorted((a, b) => (a < b ? -1 : a > b ? 1 : 0));
        expect(known).toEqual(isDown ? sorted.toReversed() : sorted);
      }
      expect(
        new Set((await rowsOf({}, { by, isDown: true })).rows.map((row) => row[by])).size,
      ).toBeGreaterThan(1);
    },
  );

  it('is narrowed by each thing that is asked, and by all of them', async () => {
    const { rows, total } = await rowsOf({});
    const count = (keep: (row: (typeof rows)[number]) => boolean) => rows.filter(keep).length;
    const one = rows[0]!;
    const asked: [Partial<FlightFilter>, (row: typeof one) => boolean][] = [
      [{ student: 'nobody' }, ({ student }) => student === null],
      [{ facility: 'Choughfell ILS 32' }, ({ facility }) => facility === 'Choughfell ILS 32'],
      [{ lessonId: one.lessonId }, ({ lessonId }) => lessonId === one.lessonId],
      [{ fromDate: one.date, toDate: one.date }, ({ date }) => date === one.date],
      [{ levelAtMost: 3 }, ({ level }) => level !== null && level <= 3],
      [{ words: 'GLIDEPATH lost' }, ({ summary }) => /glidepath/i.test(summary) && /lost/i.test(summary)],
      [{ words: 'hazel' }, ({ student }) => student === 'Hazel Wren'],
    ];
    for (const [filter, keep] of asked) {
      expect((await rowsOf(filter)).total).toBe(count(keep));
      expect(count(keep), JSON.stringify(filter)).toBeGreaterThan(0);
      expect(count(keep)).toBeLessThan(total);
    }
    const both = await rowsOf({ facility: 'Choughfell ILS 32', levelAtMost: 3 });
    expect(both.total).toBe(
      count(({ facility, level }) => facility === 'Choughfell ILS 32' && level !== null && level <= 3),
    );
  });

  it('takes words as they stand', async () => {
    for (const words of ["'; DROP TABLE approaches; --", '100%_', '"', '\\'])
      expect((await rowsOf({ words })).total).toBe(0);
    expect((await rowsOf({ words: '  ' })).total).toBe((await rowsOf({})).total);
  });

  it('gives the hash of a log once, however many approaches are in it', () =>
    opened(folder, (library) => {
      const logs = flightLogs(library, EVERY_FLIGHT);
      expect(new Set(logs).size).toBe(logs.length);
      expect(logs.length).toBeLessThan(flightRows(library, EVERY_FLIGHT, NEWEST, ALL).total);
    }));

  it('leaves to another list the logs in which no approach was found', () =>
    opened(folder, (library) => {
      const bare = logsWithoutApproach(library).map(({ fileName, student }) => [fileName, student]);
      expect(bare).toContainEqual(['taxied.csv', 'Hazel Wren']);
      const flown = new Set(flightLogs(library, EVERY_FLIGHT));
      expect(logsWithoutApproach(library).some(({ sha256 }) => flown.has(sha256))).toBe(false);
    }));
});
