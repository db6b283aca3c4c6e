import { describe, expect, it } from 'vitest';
import { START_S } from './one-flight.ts';
import { codes, issueOf, readRefused } from './reading.ts';
import { withTimes } from './with-times.ts';

const at = (iso: string) => Date.parse(iso) / 1000;

describe('times with their offset from UTC', () => {
  it.each([
    ['2024-05-01T10:00:00Z'],
    ['2024-05-01 10:00:00Z'],
    ['2024-05-01T12:00:00+02:00'],
    ['2024-05-01T06:30:00.000-0330'],
    ['20240501T100000Z'],
    ['01.05.2024 12:00:00 +02:00'],
    ['2024/05/01, 10:00:00 UTC'],
    [' 2024-05-01T10:00:00Z '],
  ])('%j is the same moment', async (text) => {
    const log = await withTimes('Timestamp', [text]);
    expect([...log.timeS]).toEqual([START_S]);
    expect([log.timeReference, log.issues]).toEqual(['utc', []]);
  });

  it('offsets may change from row to row', async () => {
    const log = await withTimes('Time', [
      '2024-05-01T10:00:00Z',
      '2024-05-01T12:00:01+02:00',
      '2024-05-01T10:00:02Z',
    ]);
    expect([...log.timeS]).toEqual([START_S, START_S + 1, START_S + 2]);
  });

  it('a row whose time is none changes nothing about those after it', async () => {
    const log = await withTimes('Time', [
      '2024-05-01T10:00:58Z',
      '2024-05-02T10:00:xxZ',
      '2024-05-01T10:00:59Z',
      '2024-05-01T10:01:00Z',
      '2024-05-01T11:01:00Z',
      '2024-05-02T11:01:00Z',
    ]);
    const seconds = [58, 59, 60, 3660, 86_400 + 3660];
    expect([...log.timeS]).toEqual(seconds.map((s) => START_S + s));
  });

  it('one column may mix ways of writing', async () => {
    const log = await withTimes('Time', [
      '2024-05-01 10:00:01',
      '2024-05-01 10:00:02 PM',
      '2024-05-01 10:00:03',
      '2024-05-01 10:00',
      '2024-05-01 10:00:60',
    ]);
    expect([...log.timeS]).toEqual([1, 12 * 3600 + 2, 3, 0, 60].map((s) => START_S + s));
  });

  it('fractions of seconds are kept', async () => {
    const log = await withTimes('Time', [
      '2024-05-01T10:00:00.125Z',
      '2024-05-01T10:00:00,25Z',
      '2024-05-01T10:00:00.375000Z',
    ]);
    expect([...log.timeS]).toEqual([START_S + 0.125, START_S + 0.25, START_S + 0.375]);
  });

  it('a column of offsets turns local date and time into UTC', async () => {
    const log = await withTimes('Lcl Date;Lcl Time;UTCOfst', [
      '2024-05-01;12:00:00;+02:00',
      '2024-05-01;04:30:01;-05:30',
      '2024-05-01;12:00:02;+02:00',
    ]);
    expect([...log.timeS]).toEqual([START_S, START_S + 1, START_S + 2]);
    expect([log.timeReference, log.issues]).toEqual(['utc', []]);
    expect(log.columns.slice(0, 3).map((column) => column.role)).toEqual(['date', 'timeOfDay', 'utcOffset']);
  });

  it('offsets may be written without a sign, or as hours', async () => {
    const log = await withTimes('Date;Time;UTC offset', [
      '2024-05-01;12:00:00;02:00',
      '2024-05-01;12:00:01;2',
    ]);
    expect([...log.timeS]).toEqual([START_S, START_S + 1]);
    const hours = await withTimes('Date;Time;UTC offset', ['2024-05-01;04:30:00;-5.5']);
    expect([...hours.timeS]).toEqual([START_S]);
  });

  it('a column of offsets that holds none leaves the times local', async () => {
    const log = await withTimes('Date;Time;UTC offset', ['2024-05-01;10:00:00;summer']);
    expect([log.timeS[0], log.timeReference]).toEqual([START_S, 'local']);
    expect(log.columns[2]!.role).toBeNull();
  });

  it('a row without its offset is local, and that is said', async () => {
    const log = await withTimes('Date;Time;UTC offset', [
      '2024-05-01;12:00:00;+02:00',
      '2024-05-01;10:00:01;',
    ]);
    expect([[...log.timeS], log.timeReference, codes(log)]).toEqual([
      [START_S, START_S + 1],
      'local',
      ['time-zone-unknown'],
    ]);
  });

  it('the first offset that is met is the clock’s; UTC itself tells nothing of where it was flown', async () => {
    const offsetOf = async (header: string, ...rows: string[]) => (await withTimes(header, rows)).utcOffsetS;
    const parts = 'Lcl Date;Lcl Time;UTCOfst';
    expect(await offsetOf(parts, '2024-05-01;12:00:00;-06:00', '2024-05-01;12:00:01;-05:00')).toBe(-21_600);
    expect(await offsetOf(parts, '2024-05-01;12:00:00;', '2024-05-01;12:00:01;-05:00')).toBe(-18_000);
    expect(await offsetOf('Timestamp', '2024-05-01T12:00:00+02:00')).toBe(7200);
    expect(await offsetOf('Timestamp', '2024-05-01T12:00:00Z')).toBeNull();
    expect(await offsetOf('Date;Time (UTC)', '2024-05-01;10:00:00')).toBeNull();
    expect(await offsetOf('Date;Time', '2024-05-01;10:00:00')).toBeNull();
  });

  it('a column of offsets beside a moment in one cell is used, beside a UTC clock it is not', async () => {
    const local = await withTimes('Date time;UTC offset', ['2024-05-01 12:00:00;+02:00']);
    const utc = await withTimes('UTC date;UTC time;UTC offset', ['2024-05-01;10:00:00;+02:00']);
    expect([local.timeS[0], utc.timeS[0]]).toEqual([START_S, START_S]);
  });

  it('a header that says UTC needs no offset in the cells', async () => {
    for (const log of [
      await withTimes('UTC', ['2024-05-01 10:00:00']),
      await withTimes('Date;Time (UTC)', ['2024-05-01;10:00:00']),
    ]) {
      expect([log.timeS[0], log.timeReference, log.issues]).toEqual([START_S, 'utc', []]);
    }
  });

  it('UTC columns are preferred to local ones', async () => {
    const log = await withTimes('Local date;Local time;UTC date;UTC time', [
      '2024-05-01;12:00:00;2024-05-01;10:00:00',
    ]);
    expect([log.timeS[0], log.timeReference]).toEqual([START_S, 'utc']);
    expect(log.columns[1]!.why).toContain('"UTC time" says it better');
  });
});

describe('local times', () => {
  it('without a zone they are taken as UTC, and that is said', async () => {
    const log = await withTimes('Date;Time', ['2024-05-01;10:00:00']);
    expect([log.timeS[0], log.timeReference]).toEqual([START_S, 'local']);
    expect(issueOf(log, 'time-zone-unknown')).toMatchObject({ severity: 'caution', count: 1 });
  });

  it.each(['+02:00', 'Europe/Berlin', 'UTC+2', 'GMT+02:00'])(
    'with the zone %s they become UTC',
    async (timeZone) => {
      const log = await withTimes('Date;Time', ['2024-05-01;12:00:00'], { timeZone });
      expect([log.timeS[0], log.timeReference, log.issues]).toEqual([START_S, 'utc', []]);
    },
  );

  it('a zone does not move times that have an offset', async () => {
    const log = await withTimes('Time', ['2024-05-01T10:00:00Z', '2024-05-01T12:00:01'], {
      timeZone: '+02:00',
    });
    expect([...log.timeS]).toEqual([START_S, START_S + 1]);
  });

  it('the clocks going back do not make time go back', async () => {
    const rows = ['27.10.2024 02:59:58', '27.10.2024 02:59:59', '27.10.2024 02:00:00', '27.10.2024 02:00:01'];
    const log = await withTimes('Time', rows, { timeZone: 'Europe/Berlin' });
    const first = at('2024-10-27T00:59:58Z');
    expect([...log.timeS]).toEqual([first, first + 1, first + 2, first + 3]);
  });

  it('the clocks going forward leave no gap', async () => {
    const log = await withTimes('Time', ['31.03.2024 01:59:59', '31.03.2024 03:00:00'], {
      timeZone: 'Europe/Berlin',
    });
    expect([...log.timeS]).toEqual([at('2024-03-31T00:59:59Z'), at('2024-03-31T01:00:00Z')]);
  });

  it('a zone that nobody knows is refused by name', async () => {
    const text = 'Date,Time,Lat,Lon,AltMSL (ft)\n2024-05-01,10:00:00,47,8,1';
    expect(await readRefused(text, { timeZone: 'Nowhere/Atall' })).toMatchObject({
      code: 'time-zone-invalid',
      severity: 'refusal',
    });
  });
});

describe('orders of dates', () => {
  it.each([
    ['13/05/2024', '2024-05-13', undefined, []],
    ['05/13/2024', '2024-05-13', undefined, []],
    ['03.05.2024', '2024-05-03', undefined, []],
    ['03.05.24', '2024-05-03', undefined, []],
    ['03/05/2024', '2024-05-03', undefined, ['date-order-assumed']],
    ['03/05/2024', '2024-03-05', 'mdy', []],
    ['03/05/2024', '2024-05-03', 'dmy', []],
    ['24/05/03', '2024-05-03', 'ymd', []],
    ['2024-05-03', '2024-05-03', 'dmy', []],
    ['20240503', '2024-05-03', undefined, []],
  ] as const)('%s is %s when the user says %s', async (text, iso, dateOrder, expected) => {
    const log = await withTimes(
      'Date;UTC time',
      [`${text};10:00:00`],
      dateOrder === undefined ? {} : { dateOrder },
    );
    expect(log.timeS[0]).toBe(at(`${iso}T10:00:00Z`));
    expect(codes(log)).toEqual(expected);
  });

  it('a value above 12 late in the file decides for the rows before it', async () => {
    const log = await withTimes('UTC date;UTC time', ['01/02/2024;23:59:59', '13/02/2024;00:00:00']);
    expect([...log.timeS]).toEqual([at('2024-02-01T23:59:59Z'), at('2024-02-13T00:00:00Z')]);
    expect(log.issues).toEqual([]);
  });

  it('the caution names a date as the file has it', async () => {
    const log = await withTimes('UTC', ['03/05/2024 10:00:00']);
    expect(issueOf(log, 'date-order-assumed')!.message).toBe(
      'Dates such as 3/5/2024 can be read in more than one order: taken as day, month, year.',
    );
  });

  it.each(['Date (mm/dd/yyyy)', 'UTC (mm/dd/yyyy hh:mm)'])(
    'a pattern in the header decides, as in %s',
    async (header) => {
      const isMoment = header.startsWith('UTC');
      const log = await withTimes(isMoment ? header : `${header};UTC time`, [
        isMoment ? '03/05/2024 10:00' : '03/05/2024;10:00',
      ]);
      expect([log.timeS[0], log.issues]).toEqual([at('2024-03-05T10:00:00Z'), []]);
      const said = await withTimes('Date (mm/dd/yyyy);UTC time', ['03/05/2024;10:00'], { dateOrder: 'dmy' });
      expect(said.timeS[0]).toBe(at('2024-05-03T10:00:00Z'));
    },
  );

  it('a pattern that is no order of dates decides nothing', async () => {
    const log = await withTimes('Date (dd/dd/yyyy);UTC time', ['03/05/2024;10:00']);
    expect(codes(log)).toEqual(['date-order-assumed']);
  });

  it('AM and PM are read', async () => {
    const log = await withTimes('UTC', ['05/13/2024 12:30:00 AM', '05/13/2024 1:30:00 PM']);
    expect([...log.timeS]).toEqual([at('2024-05-13T00:30:00Z'), at('2024-05-13T13:30:00Z')]);
  });
});

describe('times of day without a date', () => {
  it('begin on 1970-01-01, and that is said', async () => {
    const log = await withTimes('UTC time', ['10:00:00', '10:00:01.5']);
    expect([...log.timeS]).toEqual([36000, 36001.5]);
    expect(codes(log)).toEqual(['time-without-date']);
  });

  it('passing midnight adds a day, a step back over midnight takes it away again', async () => {
    const log = await withTimes('UTC time', [
      '23:59:59',
      '00:00:00',
      '00:00:01',
      '00:00:00',
      '23:00:00',
      '00:30:00',
    ]);
    expect([...log.timeS]).toEqual([86399, 86400, 86401, 86400, 82800, 88200]);
  });

  it.each(['+12:00', '+13:00', '-08:00', '-13:00', 'Pacific/Auckland'])(
    'passing midnight of the zone %s adds a day and no more',
    async (timeZone) => {
      const log = await withTimes('Local time', ['23:59:58', '23:59:59', '00:00:00', '03:00:00'], {
        timeZone,
      });
      const [first] = log.timeS;
      expect([...log.timeS].map((timeS) => timeS - first!)).toEqual([0, 1, 2, 10802]);
    },
  );

  it('take the date from a line before the header', async () => {
    const log = await withTimes(
      'UTC time',
      ['23:59:59', '00:00:00'],
      {},
      'Software version 2020-01-01\nFlight date: 2024-05-01\n',
    );
    expect([...log.timeS]).toEqual([at('2024-05-01T23:59:59Z'), at('2024-05-02T00:00:00Z')]);
    expect(log.issues).toEqual([]);
  });

  it("take no date that is not said to be the flight's, nor one that does not exist", async () => {
    const log = await withTimes(
      'UTC time',
      ['10:00:00'],
      {},
      'Something 2020-01-01\nExported on date 2020-01-01\nFlight date 2024-02-31\nFlight date 123.4.2024\n',
    );
    expect(log.timeS[0]).toBe(36000);
  });

  it('may be written without colons when the header says that they are UTC', async () => {
    const log = await withTimes('UTC time', ['095959', '100000.5']);
    expect([...log.timeS]).toEqual([35999, 36000.5]);
  });
});

describe('counted times', () => {
  it.each([
    ['Unix time', '1714557600', '1714557600.5'],
    ['epoch (ms)', '1714557600000', '1714557600500'],
    ['timestamp', '1714557600000', '1714557600500'],
    ['timestamp', '1714557600000000', '1714557600500000'],
    ['time_ns', '1714557600000000000', '1714557600500000000'],
    ['Time', '1714557600000000000', '1714557600500000000'],
    ['Time (s)', '1714557600', '1714557600.5'],
    ['Time since 1970 (s)', '1714557600', '1714557600.5'],
  ])('%s %s is a count since 1970', async (header, first, second) => {
    const log = await withTimes(header, [first, second]);
    expect(log.timeS[0]).toBeCloseTo(START_S, 3);
    expect(log.timeS[1]).toBeCloseTo(START_S + 0.5, 3);
    expect([log.timeReference, log.issues]).toEqual(['utc', []]);
    expect(log.columns[0]!.role).toBe('epoch');
  });

  it.each([
    ['Elapsed time (s)', ['0', '1.5', '60']],
    ['Time', ['0', '1.5', '60']],
    ['Time since start (ms)', ['0', '1500', '60000']],
    ['Time since boot (µs)', ['0', '1500000', '60000000']],
    ['Time since boot (ns)', ['0', '1500000000', '60000000000']],
    ['Seconds', ['0', '1.5', '60']],
    ['Elapsed', ['0:00', '0:01.5', '1:00']],
    ['Elapsed', ['00:00:00', '00:00:01.5', '00:01:00']],
  ])('%s %j counts from the start of the log', async (header, cells) => {
    const log = await withTimes(header, cells);
    expect([...log.timeS]).toEqual([0, 1.5, 60]);
    expect(log.timeReference).toBe('elapsed');
    expect(codes(log)).toEqual(['time-elapsed']);
  });

  it('hours beyond a day are counted', async () => {
    const log = await withTimes('Elapsed', ['25:00:01', '100:00:00']);
    expect([...log.timeS]).toEqual([90001, 360000]);
  });

  it('a start from the settings, or from a line before the header, makes them UTC', async () => {
    const said = await withTimes('Elapsed', ['0', '2'], { startS: START_S });
    const stated = await withTimes('Elapsed', ['0', '2'], {}, 'Start,2024-05-01 12:00:00+02:00\n');
    const both = await withTimes('Elapsed', ['0', '2'], { startS: 5 }, 'Start: 2024-05-01T10:00:00\n');
    const dateOnly = await withTimes('Elapsed', ['0'], {}, 'Flight date 2024-05-01\n');
    expect([[...said.timeS], [...stated.timeS], [...both.timeS], [...dateOnly.timeS]]).toEqual([
      [START_S, START_S + 2],
      [START_S, START_S + 2],
      [5, 7],
      [0],
    ]);
    expect([said.timeReference, stated.timeReference, dateOnly.timeReference]).toEqual([
      'utc',
      'utc',
      'elapsed',
    ]);
    expect([...said.issues, ...stated.issues]).toEqual([]);
  });

  it('a stated start without its offset is local, unless the zone is set', async () => {
    const preamble = 'Start: 2024-05-01 12:00:00\n';
    const local = await withTimes('Elapsed', ['0'], {}, preamble);
    const zoned = await withTimes('Elapsed', ['0'], { timeZone: '+02:00' }, preamble);
    expect([local.timeS[0], local.timeReference, codes(local)]).toEqual([
      START_S + 7200,
      'local',
      ['time-zone-unknown'],
    ]);
    expect([zoned.timeS[0], zoned.timeReference, codes(zoned)]).toEqual([START_S, 'utc', []]);
  });

  it('rows whose count is no number are left out and counted', async () => {
    const log = await withTimes('Elapsed', ['0', 'x', '1']);
    expect([...log.timeS]).toEqual([0, 1]);
    expect(issueOf(log, 'row-without-time')).toMatchObject({ count: 1, firstLine: 3 });
  });
});
