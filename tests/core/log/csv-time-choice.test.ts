import { describe, expect, it } from 'vitest';
import { START_S } from './one-flight.ts';
import { issueOf, readRefused } from './reading.ts';
import { withTimes } from './with-times.ts';

describe('which time is taken', () => {
  it('a moment before a count before date and time before elapsed time', async () => {
    const log = await withTimes('Elapsed;Date;Time of day;Epoch;Timestamp', [
      '7;2024-05-02;10:00:00;1714557601;2024-05-01T10:00:00Z',
    ]);
    expect(log.timeS[0]).toBe(START_S);
    expect(log.columns.slice(0, 5).map((column) => column.role)).toEqual([
      null,
      null,
      null,
      null,
      'dateTime',
    ]);
    expect(log.columns[3]!.why).toContain('the time is taken from other columns');
  });

  it('what the user maps comes first', async () => {
    const log = await withTimes('Elapsed;Timestamp', ['7;2024-05-01T10:00:00Z'], {
      columns: { Elapsed: 'elapsed' },
    });
    expect(log.timeS[0]).toBe(7);
  });

  it('a time column that is empty for the first rows is still known by its name', async () => {
    const empty = Array.from({ length: 1100 }, () => ';');
    const log = await withTimes('UTC date;UTC time', [...empty, '2024-05-01;10:00:00']);
    expect([...log.timeS]).toEqual([START_S]);
    expect(issueOf(log, 'row-without-time')).toMatchObject({ count: 1100, firstLine: 2 });
    const moment = await withTimes('Timestamp', [...empty.map(() => ''), '2024-05-01T10:00:00Z']);
    expect([...moment.timeS]).toEqual([START_S]);
  });

  it.each([
    ['Elapsed', '2024-05-01'],
    ['Elapsed', 'soon'],
    ['Time', 'soon'],
  ])('a column "%s" that holds %s is no time', async (header, cell) => {
    expect(await readRefused(`${header},Lat,Lon,AltMSL (ft)\n${cell},47,8,1`)).toMatchObject({
      code: 'no-time',
    });
  });

  it('a name alone tells what an empty column would hold, but gives no row a time', async () => {
    for (const header of ['Timestamp', 'Epoch', 'Elapsed', 'Time']) {
      expect(await readRefused(`${header},Lat,Lon,AltMSL (ft)\n,47,8,1`)).toMatchObject({
        code: 'no-usable-rows',
      });
    }
  });

  it('a column named date that holds numbers is none', async () => {
    const text = 'Date,Lat,Lon,AltMSL (ft)\n5,47,8,1\n6,47,8,1';
    expect(await readRefused(text)).toMatchObject({ code: 'no-time' });
  });
});
