import { describe, expect, it } from 'vitest';
import type { Log } from '../../../core/log/log.ts';
import { codes, issueOf, readUsable } from './reading.ts';

const START_S = Date.UTC(2024, 4, 1, 10, 0, 0) / 1000;
const FT_PER_M = 1 / 0.3048;

/** The numbers of the flight that every file here writes in its own way. */
function expectFlight(log: Log, lines: number[]): void {
  expect([...log.timeS]).toEqual([START_S, START_S + 1, START_S + 2]);
  expect([...log.values.latDeg]).toEqual([47.1, 47.2, 47.3]);
  expect([...log.values.lonDeg]).toEqual([8.1, 8.2, 8.3]);
  expect([...log.values.altitudeGeometricFt!]).toEqual([3000, 2990.5, 2981]);
  expect([...log.line]).toEqual(lines);
}

const HEADER = 'Time,Latitude,Longitude,AltMSL (ft)';
const ROWS = [
  '2024-05-01T10:00:00Z,47.1,8.1,3000',
  '2024-05-01T10:00:01Z,47.2,8.2,2990.5',
  '2024-05-01T10:00:02Z,47.3,8.3,2981',
];
const PLAIN = [HEADER, ...ROWS].join('\n') + '\n';
const role = (log: Log, header: string) => log.columns.find((column) => column.header === header)?.role;

describe('delimiters, quotes and line ends', () => {
  it.each([
    [';', 'semicolon'],
    ['\t', 'tab'],
    ['|', 'bar'],
  ])('a file delimited by %j is read as comma-separated is', async (delimiter, name) => {
    const log = await readUsable(PLAIN.replaceAll(',', delimiter));
    expectFlight(log, [2, 3, 4]);
    expect(log.recognised).toBe(`${name}-separated, header on line 1`);
  });

  it.each(['\r\n', '\r', '\n'])('line ends %j make no difference', async (end) => {
    expectFlight(await readUsable(PLAIN.replaceAll('\n', end)), [2, 3, 4]);
  });

  it('line ends that change within the file make no difference', async () => {
    expectFlight(
      await readUsable([HEADER, '\r\n', ROWS[0], '\n', ROWS[1], '\r\n', ROWS[2], '\n'].join('')),
      [2, 3, 4],
    );
  });

  it('a missing line end after the last row makes no difference', async () => {
    expectFlight(await readUsable(PLAIN.trimEnd()), [2, 3, 4]);
  });

  it('a byte-order mark is no part of the first name', async () => {
    const log = await readUsable('\ufeff' + PLAIN);
    expectFlight(log, [2, 3, 4]);
    expect(log.columns[0]?.header).toBe('Time');
  });

  it.each(['"', "'"])('cells in quotes %s are read without them', async (quote) => {
    const text = PLAIN.replaceAll(/[^,\n]+/g, (cell) => quote + cell + quote);
    expectFlight(await readUsable(text), [2, 3, 4]);
  });

  it('a quoted cell may hold the delimiter, quotes and line ends', async () => {
    const text = `Note,${HEADER}\n"a, ""b""",${ROWS[0]}\n"two\nlines",${ROWS[1]}\n,${ROWS[2]}\n`;
    const log = await readUsable(text);
    expectFlight(log, [2, 3, 5]);
    expect(log.issues).toEqual([]);
  });

  it('a header whose quoted name runs over two lines is one header', async () => {
    const text = PLAIN.replace('AltMSL (ft)', '"AltMSL\n(ft)"');
    expectFlight(await readUsable(text), [3, 4, 5]);
  });

  it('a stray quote costs its own line and not the rest of the file', async () => {
    const text = `${HEADER},Note\n${ROWS[0]},\n2024-05-01T10:00:00Z,48,9,1,"stray\n${ROWS[1]},"a"\n${ROWS[2]},\n`;
    const log = await readUsable(text);
    expectFlight(log, [2, 4, 5]);
    expect(log.rowsSeen).toBe(4);
    expect(issueOf(log, 'quote-unclosed')).toMatchObject({ count: 1, firstLine: 3 });
  });

  it('stray quotes in several lines each cost their own line', async () => {
    const bad = '2024-05-01T10:00:00Z,48,"9,1';
    const log = await readUsable([HEADER, bad, ROWS[0], ROWS[1], bad, bad, ROWS[2], bad].join('\n'));
    expectFlight(log, [3, 4, 7]);
    expect(issueOf(log, 'quote-unclosed')).toMatchObject({ count: 4, firstLine: 2 });
  });

  it('text after a closing quote makes the row unreadable, not its neighbours', async () => {
    const log = await readUsable(
      [HEADER, ROWS[0], ROWS[1], '"2024-05-01"T10:00:00Z,48,9,1', ROWS[2]].join('\n'),
    );
    expectFlight(log, [2, 3, 5]);
    expect(issueOf(log, 'quote-unclosed')).toMatchObject({ count: 1, firstLine: 4 });
  });
});

describe('what stands around the table', () => {
  it('comment and metadata lines before the header are passed over', async () => {
    const log = await readUsable(`# a recorder\nfirmware,1.2\n\n${PLAIN}`);
    expectFlight(log, [5, 6, 7]);
    expect(log.recognised).toBe('comma-separated, header on line 4');
  });

  it('comment lines and blank lines between the rows are no rows', async () => {
    const log = await readUsable(
      [HEADER, ROWS[0], '# marker', '', '// ,,,', ROWS[1], ' , , , ', ROWS[2], ''].join('\n'),
    );
    expectFlight(log, [2, 6, 8]);
    expect([log.rowsSeen, log.issues]).toEqual([3, []]);
  });

  it('a header behind a comment sign is a header', async () => {
    expectFlight(await readUsable('#' + PLAIN), [2, 3, 4]);
  });

  it('a summary block with a header of its own is not taken for the table', async () => {
    const summary = 'Date,Duration (s),Max altitude (ft),Max speed (kt)\n2024-05-01,3600,5500,120\n\n';
    expectFlight(await readUsable(summary + PLAIN), [5, 6, 7]);
  });

  it.each(['above', 'below'])('a row of units %s the names gives the units', async (where) => {
    const names = 'Lcl Date,Lcl Time,UTCOfst,Latitude,Longitude,AltGPS,GndSpd';
    const units = '#yyy-mm-dd,hh:mm:ss,hh:mm,degrees,degrees,m msl,km/h';
    const head = where === 'above' ? [units, names] : [names, units];
    const rows = [
      '2024-05-01,12:00:00,+02:00,47.1,8.1,1000,185.2',
      '2024-05-01,12:00:01,+02:00,47.2,8.2,,92.6',
    ];
    const log = await readUsable([...head, ...rows].join('\n'));
    expect([...log.timeS]).toEqual([START_S, START_S + 1]);
    expect(log.values.altitudeGeometricFt![0]).toBeCloseTo(1000 * FT_PER_M, 9);
    expect(log.values.altitudeGeometricFt![1]).toBeNaN();
    expect(log.values.groundspeedKt![0]).toBeCloseTo(100, 9);
    expect(log.values.groundspeedKt![1]).toBeCloseTo(50, 9);
    expect([...log.line]).toEqual([3, 4]);
    expect(log.recognised).toBe(
      `comma-separated, header on line ${where === 'above' ? 2 : 1}, units on line ${where === 'above' ? 1 : 2}`,
    );
    expect(log.columns[5]).toMatchObject({
      header: 'AltGPS',
      unitText: 'm msl',
      role: 'altitudeGeometricFt',
    });
  });

  it.each(['long first', 'short first'])(
    'long and short names in two rows are one header (%s)',
    async (order) => {
      const long = 'Time,Latitude,Longitude,GPS altitude above sea level (ft)';
      const short = 'Tm,La,Lo,Al';
      const head = order === 'long first' ? [long, short] : [short, long];
      expectFlight(await readUsable([...head, ...ROWS].join('\n')), [3, 4, 5]);
    },
  );

  it('a second row of names helps where the first is not understood', async () => {
    const log = await readUsable(
      [HEADER, 'Time,Latitude,Longitude,x', ...ROWS]
        .join('\n')
        .replace('AltMSL (ft)', 'A77')
        .replace(',x', ',AltMSL (ft)'),
    );
    expectFlight(log, [3, 4, 5]);
  });

  it('padding around names and values is ignored', async () => {
    expectFlight(await readUsable(PLAIN.replaceAll(',', '  ,  ').replaceAll(/^/gm, '  ')), [2, 3, 4]);
  });

  it('what the recorder puts before every name is ignored', async () => {
    const text = PLAIN.replace(HEADER, 'xq_time,xq_latitude,xq_longitude,xq_alt_msl_ft');
    expectFlight(await readUsable(text), [2, 3, 4]);
  });

  it('a header that comes again begins a new stretch and is no row', async () => {
    const log = await readUsable([HEADER, ROWS[0], ROWS[1], HEADER, ROWS[2]].join('\n'));
    expectFlight(log, [2, 3, 5]);
    expect([log.breaks, log.rowsSeen, log.issues]).toEqual([[2], 3, []]);
  });

  it('a header that comes again with its units row and comment lines is one break', async () => {
    const head = ['#power on', '#s,deg,deg,ft msl', 'Unix time,Lat,Lon,AltGPS'];
    const log = await readUsable(
      [...head, '1714557600,1,2,3', ...head, '1714557601,1,2,4', '1714557602,1,2,5'].join('\n'),
    );
    expect([log.breaks, [...log.line], log.issues]).toEqual([[1], [4, 8, 9], []]);
  });

  it('a header twice in a row, or after the last fix, is no break', async () => {
    const log = await readUsable([HEADER, HEADER, ...ROWS, HEADER].join('\n'));
    expectFlight(log, [3, 4, 5]);
    expect(log.breaks).toEqual([]);
  });

  it('NUL padding at the end, between lines and in cells is ignored', async () => {
    const log = await readUsable(
      [HEADER, ROWS[0], '\0'.repeat(5000), `${ROWS[1]}\0\0`, ROWS[2], '\0'.repeat(3_000_000)].join('\n'),
    );
    expectFlight(log, [2, 4, 5]);
    expect([log.rowsSeen, log.issues]).toEqual([3, []]);
  });

  it('a row that NULs cut off is not joined with what follows', async () => {
    const log = await readUsable(
      `Unix time,Lat,Lon,AltMSL (ft)\n1714557600,1,2,3\n1714557601,1,2.${'\0'.repeat(3)}1714557602,1,2,4\n1714557603,1,2,5`,
    );
    expect([...log.timeS]).toEqual([1714557600, 1714557603]);
    expect(log.rowsSeen).toBe(3);
  });
});

describe('numbers', () => {
  it('the same flight in metres, km/h, semicolons and decimal commas is the same flight', async () => {
    const original = await readUsable(
      'Time,Latitude,Longitude,AltMSL (ft),Ground speed (kt),VS (ft/min)\n2024-05-01T10:00:00.5Z,47.123456,-8.654321,3000.5,100.25,-500\n2024-05-01T10:00:01.5Z,47.1235,-8.6543,2992,99,-510',
    );
    const metric = await readUsable(
      'Zeit (UTC);Breite;Länge;Höhe über NN (m);Geschwindigkeit über Grund (km/h);Steigrate (m/s)\n01.05.2024 10:00:00,5;47,123456;-8,654321;914,5524;185,663;-2,54\n01.05.2024 10:00:01,5;47,1235;-8,6543;911,9616;183,348;-2,5908',
    );
    expect([...metric.timeS]).toEqual([...original.timeS]);
    expect([...metric.values.latDeg]).toEqual([...original.values.latDeg]);
    expect([...metric.values.lonDeg]).toEqual([...original.values.lonDeg]);
    for (const quantity of ['altitudeGeometricFt', 'groundspeedKt', 'verticalSpeedFpm'] as const) {
      for (const [i, value] of original.values[quantity]!.entries())
        expect(metric.values[quantity]![i]).toBeCloseTo(value, 8);
    }
    expect(metric.timeReference).toBe('utc');
  });

  it('decimal commas in quotes in a comma-separated file are read', async () => {
    const log = await readUsable(
      'Time,Lat,Lon,AltMSL (ft)\n2024-05-01T10:00:00Z,"47,1","8,1","3000,5"\n2024-05-01T10:00:01Z,"47,2","8,2","2999,5"',
    );
    expect([...log.values.latDeg]).toEqual([47.1, 47.2]);
    expect([...log.values.altitudeGeometricFt!]).toEqual([3000.5, 2999.5]);
  });

  it('thousands in groups are read in both styles', async () => {
    const point = await readUsable('Time,Lat,Lon,AltMSL (ft)\n2024-05-01T10:00:00Z,47.1,8.1,"3,000.5"');
    const comma = await readUsable(
      "Time;Lat;Lon;AltMSL (ft)\n2024-05-01T10:00:00Z;47,1;8,1;3.000,5\n2024-05-01T10:00:01Z;47,1;8,1;3'000",
    );
    expect([...point.values.altitudeGeometricFt!]).toEqual([3000.5]);
    expect([...comma.values.altitudeGeometricFt!]).toEqual([3000.5, 3000]);
  });

  it('epoch seconds in scientific notation are read', async () => {
    const log = await readUsable(
      'Unix time,Lat,Lon,AltMSL (ft)\n1.7145576E+09,47.1,8.1,3000\n1.714557601e9,47.2,8.2,2990.5\n1.714557602E9,47.3,8.3,2981',
    );
    expectFlight(log, [2, 3, 4]);
  });

  it('an impossible value is a mark for "invalid" and becomes unknown; a possible one stays', async () => {
    const log = await readUsable(
      'Time,Lat,Lon,AltMSL (ft),GS (kt),Track (deg),HDOP,VS (fpm)\n2024-05-01T10:00:00Z,47.1,8.1,-1,-1,999,999,-1\n2024-05-01T10:00:01Z,47.1,8.1,999,999,-1,99,999\n2024-05-01T10:00:02Z,47.1,8.1,-9999,0,360,0.8,0',
    );
    expect([...log.values.altitudeGeometricFt!]).toEqual([-1, 999, NaN]);
    expect([...log.values.groundspeedKt!]).toEqual([NaN, NaN, 0]);
    expect([...log.values.courseTrueDeg!]).toEqual([NaN, -1, 360]);
    expect([...log.values.hdop!]).toEqual([NaN, 99, 0.8]);
    expect([...log.values.verticalSpeedFpm!]).toEqual([-1, 999, 0]);
    const marks = log.issues.filter((issue) => issue.code === 'value-marked-invalid');
    expect(marks.map(({ count, firstLine }) => [count, firstLine])).toEqual([
      [1, 4],
      [2, 2],
      [1, 2],
      [1, 2],
    ]);
  });

  it('empty cells and words for nothing are unknown and no fault; other text is counted by column', async () => {
    const log = await readUsable(
      'Time,Lat,Lon,AltMSL (ft),GS (kt)\n2024-05-01T10:00:00Z,47.1,8.1,,NaN\n2024-05-01T10:00:01Z,47.1,8.1,---,n/a\n2024-05-01T10:00:02Z,47.1,8.1,3x,80\n2024-05-01T10:00:03Z,47.1,8.1,0x10,Infinity',
    );
    expect([...log.values.altitudeGeometricFt!]).toEqual([NaN, NaN, NaN, NaN]);
    expect([...log.values.groundspeedKt!]).toEqual([NaN, NaN, 80, NaN]);
    const faults = log.issues.filter((issue) => issue.code === 'value-unreadable');
    expect(
      faults.map(({ message, count, firstLine }) => [message.includes('"AltMSL (ft)"'), count, firstLine]),
    ).toEqual([
      [true, 2, 4],
      [false, 1, 5],
    ]);
  });

  it('thousands of columns are read, and listed', async () => {
    const extra = Array.from({ length: 3000 }, (_, i) => `sensor ${i} volts`);
    const text = [
      `${HEADER},${extra.join(',')}`,
      ...ROWS.map((row) => `${row},${extra.map((_, i) => i).join(',')}`),
    ].join('\n');
    const log = await readUsable(text);
    expectFlight(log, [2, 3, 4]);
    expect(log.columns.length).toBe(3004);
    expect(log.columns.filter((column) => column.role !== null).length).toBe(4);
  });
});

describe('rows that cannot be used', () => {
  it('rows without a usable time or position are left out and counted apart', async () => {
    const bad = [
      ',47,8,1',
      'noon,47,8,1',
      '2024-05-01T10:00:00Z,,8,1',
      '2024-05-01T10:00:00Z,47,,1',
      '2024-05-01T10:00:00Z,91,8,1',
      '2024-05-01T10:00:00Z,47,361,1',
      '2024-02-31T10:00:00Z,47,8,1',
      '2024-05-01T25:00:00Z,47,8,1',
    ];
    const log = await readUsable([HEADER, ROWS[0], ...bad, ROWS[1], ROWS[2]].join('\n'));
    expectFlight(log, [2, 11, 12]);
    expect(log.rowsSeen).toBe(11);
    expect(issueOf(log, 'row-without-position')).toMatchObject({
      count: 4,
      firstLine: 5,
      severity: 'caution',
    });
    expect(issueOf(log, 'row-without-time')).toMatchObject({ count: 4, firstLine: 3, severity: 'caution' });
  });

  it('half a line at the end is left out and counted', async () => {
    for (const half of [
      '2024-05-01T10:00:03Z,47.4,8.',
      '2024-05-01T10:00:03Z,47.',
      '2024',
      '2024-05-01T10:00:03Z,47.4,8.4',
    ]) {
      const log = await readUsable(`${PLAIN}${half}`);
      expectFlight(log, [2, 3, 4]);
      expect(issueOf(log, 'row-cut-short')).toMatchObject({ count: 1, firstLine: 5 });
      expect(log.rowsSeen).toBe(4);
    }
  });

  it('a row with too few cells in the middle is left out and counted', async () => {
    const log = await readUsable([HEADER, ROWS[0], '2024-05-01T10:00:09Z,47,8', ROWS[1], ROWS[2]].join('\n'));
    expectFlight(log, [2, 4, 5]);
    expect(issueOf(log, 'row-too-short')).toMatchObject({ count: 1, firstLine: 3 });
  });

  it('a row that a stray delimiter has moved is left out and counted', async () => {
    const log = await readUsable(
      [HEADER, ROWS[0], '2024-05-01T10:00:09Z,47,8,1,5', ROWS[1], `${ROWS[2]},,`].join('\n'),
    );
    expectFlight(log, [2, 4, 5]);
    expect(issueOf(log, 'row-too-long')).toMatchObject({ count: 1, firstLine: 3 });
  });

  it('a header with a delimiter too many asks no more cells of the rows than they have', async () => {
    const log = await readUsable(PLAIN.replace(HEADER, `${HEADER},`));
    expectFlight(log, [2, 3, 4]);
    expect(log.issues).toEqual([]);
  });

  it('(0, 0), repeated and backward times are kept: they are for the track to judge', async () => {
    const log = await readUsable(
      [HEADER, '2024-05-01T10:00:01Z,0,0,1', '2024-05-01T10:00:01Z,1,1,1', '2024-05-01T10:00:00Z,1,1,1'].join(
        '\n',
      ),
    );
    expect(log.timeS.length).toBe(3);
    expect(log.issues).toEqual([]);
  });

  it('a row whose date does not exist takes its break with it to the next row', async () => {
    const log = await readUsable(
      [
        HEADER,
        ROWS[0],
        HEADER,
        '2024-02-30T10:00:00Z,1,1,1',
        ROWS[1],
        HEADER,
        ROWS[2],
        HEADER,
        '2024-02-30T10:00:00Z,1,1,1',
      ].join('\n'),
    );
    expectFlight(log, [2, 5, 7]);
    expect(log.breaks).toEqual([1, 2]);
    expect(issueOf(log, 'row-without-time')).toMatchObject({ count: 2, firstLine: 4 });
  });
});

describe('positions', () => {
  it('longitudes from 0 to 360 are brought to -180 to 180, and that is said', async () => {
    const log = await readUsable(
      'Time,Lat,Lon,AltMSL (ft)\n2024-05-01T10:00:00Z,47,359.5,1\n2024-05-01T10:00:01Z,47,180,1\n2024-05-01T10:00:02Z,47,179.5,1\n2024-05-01T10:00:03Z,47,360,1\n2024-05-01T10:00:03Z,47,-180,1',
    );
    expect([...log.values.lonDeg]).toEqual([-0.5, -180, 179.5, 0, -180]);
    expect(issueOf(log, 'longitude-wrapped')).toMatchObject({ count: 3, firstLine: 2, severity: 'note' });
  });

  it.each([
    ['47°30\'36"N', '8°15\'0"W', 47.51, -8.25],
    ['N47 30.6', 'W008 15.0', 47.51, -8.25],
    ['S 47.51', 'E 8.25', -47.51, 8.25],
    ['-0 59 53.8', '8:15:00', -(59 / 60 + 53.8 / 3600), 8.25],
    ['47.51n', '8.25 o', 47.51, 8.25],
  ])('degrees written as %s, %s are read', async (lat, lon, latDeg, lonDeg) => {
    const log = await readUsable(`Time;Lat;Lon;AltMSL (ft)\n2024-05-01T10:00:00Z;${lat};${lon};1`);
    expect(log.values.latDeg[0]).toBeCloseTo(latDeg, 12);
    expect(log.values.lonDeg[0]).toBeCloseTo(lonDeg, 12);
  });

  it('columns of hemisphere letters give the sign', async () => {
    const log = await readUsable(
      'Time,Lat,N/S,Lon,E/W,AltMSL (ft)\n2024-05-01T10:00:00Z,47.5,S,8.25,W,1\n2024-05-01T10:00:01Z,47.5,N,8.25,E,1',
    );
    expect([[...log.values.latDeg], [...log.values.lonDeg]]).toEqual([
      [-47.5, 47.5],
      [-8.25, 8.25],
    ]);
  });

  it('radians and 1e-7 degrees are read only where the header says so', async () => {
    const whole = await readUsable(
      'Time,lat (1e-7 deg),lon (degE7),AltMSL (ft)\n2024-05-01T10:00:00Z,471234567,-81234567,1',
    );
    expect(whole.values.latDeg[0]).toBeCloseTo(47.1234567, 12);
    expect(whole.values.lonDeg[0]).toBeCloseTo(-8.1234567, 12);
    const radians = await readUsable(
      'Time,lat [rad],lon [rad],AltMSL (ft)\n2024-05-01T10:00:00Z,0.785398163397448,-0.5,1',
    );
    expect(radians.values.latDeg[0]).toBeCloseTo(45, 9);
    expect(radians.values.lonDeg[0]).toBeCloseTo(-28.6478897565, 9);
  });
});

describe('columns', () => {
  it('every column is listed, with the reason for what it is taken for', async () => {
    const log = await readUsable(
      'Time,Lat,Lon,Alt (ft),GPS alt (ft),Wind speed (kt),AGL (ft)\n2024-05-01T10:00:00Z,1,2,3,4,5,6',
    );
    expect(log.columns.map((column) => [column.index, column.header, column.role])).toEqual([
      [0, 'Time', 'dateTime'],
      [1, 'Lat', 'latDeg'],
      [2, 'Lon', 'lonDeg'],
      [3, 'Alt (ft)', 'altitudeUnnamedFt'],
      [4, 'GPS alt (ft)', 'altitudeGeometricFt'],
      [5, 'Wind speed (kt)', null],
      [6, 'AGL (ft)', null],
    ]);
    expect(log.columns[4]!.why).toBe('the header says altitude gnss, unit "ft"');
    expect(log.columns[5]!.why).toBe('a value of the wind, not of the aircraft');
    expect(log.columns.every((column) => column.confidence >= 0 && column.confidence <= 1)).toBe(true);
    expect(log.columns[4]!.confidence).toBeGreaterThan(log.columns[3]!.confidence);
    expect(codes(log)).toEqual(['altitude-kind-assumed']);
  });

  it('of two columns for one quantity the surer is used, the other says why not', async () => {
    const log = await readUsable(
      'Time,Lat,Lon,Alt MSL (ft),Speed (kt),Ground speed (kt)\n2024-05-01T10:00:00Z,1,2,3,4,5',
    );
    expect([...log.values.groundspeedKt!]).toEqual([5]);
    expect(log.columns[4]).toMatchObject({ role: null, confidence: 0 });
    expect(log.columns[4]!.why).toContain('"Ground speed (kt)" says it better');
  });

  it('of two equally good columns the first is used', async () => {
    const log = await readUsable('Time,Lat,Lon,Alt MSL 1 (ft),Alt MSL 2 (ft)\n2024-05-01T10:00:00Z,1,2,3,4');
    expect([...log.values.altitudeGeometricFt!]).toEqual([3]);
  });

  it('the user decides over the words, and can leave a column out', async () => {
    const text = 'Time,Lat,Lon,H7,GPS alt (ft),Speed\n2024-05-01T10:00:00Z,1,2,3,4,5';
    const log = await readUsable(text, {
      columns: { H7: 'altitudePressureFt', 'GPS alt (ft)': null, Speed: 'airspeedIndicatedKt' },
      units: { H7: 'm', Speed: 'km/h' },
    });
    expect(log.values.altitudePressureFt![0]).toBeCloseTo(3 * FT_PER_M, 9);
    expect(log.values.airspeedIndicatedKt![0]).toBeCloseTo(5 / 1.852, 9);
    expect(log.values.altitudeGeometricFt).toBeUndefined();
    expect(log.columns[3]).toMatchObject({
      role: 'altitudePressureFt',
      confidence: 1,
      why: 'the user said so',
    });
    expect(role(log, 'GPS alt (ft)')).toBeNull();
    expect(log.issues).toEqual([]);
  });

  it('a log whose every name is unknown can be mapped by hand', async () => {
    const columns = { A: 'epoch', B: 'latDeg', C: 'lonDeg', D: 'altitudeIndicatedFt' } as const;
    const log = await readUsable('A,B,C,D\n1714557600,47,8,1000', { columns });
    expect([...log.timeS, ...log.values.latDeg, ...log.values.altitudeIndicatedFt!]).toEqual([
      START_S,
      47,
      1000,
    ]);
  });

  it('switches are read as words or figures', async () => {
    const log = await readUsable(
      'Time,Lat,Lon,AltMSL (ft),Gear\n2024-05-01T10:00:00Z,1,2,3,DOWN\n2024-05-01T10:00:01Z,1,2,3,up\n2024-05-01T10:00:02Z,1,2,3,1\n2024-05-01T10:00:03Z,1,2,3,transit',
    );
    expect([...log.values.gearDown!]).toEqual([1, 0, 1, NaN]);
    expect(issueOf(log, 'value-unreadable')).toMatchObject({ count: 1, firstLine: 5 });
  });

  it("temperatures and pressures come in the quantity's unit whatever the file's", async () => {
    const log = await readUsable(
      'Time,Lat,Lon,AltMSL (ft),OAT (°F),QNH,E1 MAP (hPa)\n2024-05-01T10:00:00Z,1,2,3,59,29.92,1013.25',
    );
    expect(log.values.outsideTemperatureC![0]).toBeCloseTo(15, 9);
    expect(log.values.altimeterSettingHpa![0]).toBeCloseTo(29.92 * 33.8639, 9);
    expect(log.values.manifoldPressureInHg![0]).toBeCloseTo(29.9212, 3);
  });

  it.each([
    ['1013', 1013],
    ['101300', 1013],
    ['30.00', 1015.917],
  ])('an altimeter setting of %s tells its unit by its size', async (text, hpa) => {
    const log = await readUsable(`Time,Lat,Lon,AltMSL (ft),QNH\n2024-05-01T10:00:00Z,1,2,3,${text}`);
    expect(log.values.altimeterSettingHpa![0]).toBeCloseTo(hpa, 9);
  });
});

describe('units that the file does not name', () => {
  it('altitude is taken as feet and speed as knots, and that is said', async () => {
    const log = await readUsable(
      'Time,Lat,Lon,GPS altitude,Ground speed,VS\n2024-05-01T10:00:00Z,1,2,1000,100,-500',
    );
    expect([
      log.values.altitudeGeometricFt![0],
      log.values.groundspeedKt![0],
      log.values.verticalSpeedFpm![0],
    ]).toEqual([1000, 100, -500]);
    expect(codes(log)).toEqual(['unit-assumed', 'unit-assumed', 'unit-assumed']);
    expect(log.issues[0]!.message).toBe(
      'Column "GPS altitude" (altitude above sea level (GNSS)) names no unit: taken as ft.',
    );
  });

  it('the units of the other columns decide where they agree', async () => {
    const metric = await readUsable(
      'Time,Lat,Lon,GPS altitude,Ground speed (km/h),TAS,VS\n2024-05-01T10:00:00Z,1,2,1000,185.2,185.2,-2',
    );
    expect(metric.values.altitudeGeometricFt![0]).toBeCloseTo(1000 * FT_PER_M, 9);
    expect(metric.values.airspeedTrueKt![0]).toBeCloseTo(100, 9);
    expect(metric.values.verticalSpeedFpm![0]).toBeCloseTo(-393.7, 1);
    const trade = await readUsable(
      'Time,Lat,Lon,GPS altitude (ft),Ground speed,VS\n2024-05-01T10:00:00Z,1,2,1000,100,-500',
    );
    expect([trade.values.groundspeedKt![0], trade.values.verticalSpeedFpm![0]]).toEqual([100, -500]);
    expect([...codes(metric), ...codes(trade)]).toEqual([]);
  });

  it('units that disagree decide nothing', async () => {
    const log = await readUsable(
      'Time,Lat,Lon,GPS altitude,Ground speed (km/h),VS (ft/min)\n2024-05-01T10:00:00Z,1,2,1000,185.2,-500',
    );
    expect(log.values.altitudeGeometricFt![0]).toBe(1000);
    expect(codes(log)).toEqual(['unit-assumed']);
  });

  it('metres beside a speed without a unit leave its unit open', async () => {
    const log = await readUsable(
      'Time,Lat,Lon,GPS altitude (m),Ground speed\n2024-05-01T10:00:00Z,1,2,1000,50',
    );
    expect(log.values.groundspeedKt![0]).toBe(50);
    expect(codes(log)).toEqual(['unit-assumed']);
  });
});
