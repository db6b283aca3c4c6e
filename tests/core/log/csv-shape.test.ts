import { describe, expect, it } from 'vitest';
import { expectFlight, FT_PER_M, HEADER, PLAIN, ROWS, START_S } from './one-flight.ts';
import { issueOf, readUsable } from './reading.ts';

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
    expectFlight(await readUsable('\ufeff' + PLAIN.replace('Time', '"Time"'), {}, 1), [2, 3, 4]);
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

  it('lines that a stray quote would join to a row of another length stay rows of their own', async () => {
    const bad = '"2024-05-01T10:00:00Z,47.1,8.1,3000,';
    const log = await readUsable(
      [`${HEADER},Note`, bad, `${ROWS[0]},x"`, `${ROWS[1]},`, `${ROWS[2]},`].join('\n'),
    );
    expectFlight(log, [3, 4, 5]);
    expect(issueOf(log, 'quote-unclosed')).toMatchObject({ count: 1, firstLine: 2 });
  });

  it('a quote may stay open for 16 lines and no longer', async () => {
    const text = (lines: number) =>
      [`${HEADER},Note`, `${ROWS[0]},"a${'\n'.repeat(lines - 1)}"`, `${ROWS[1]},`, `${ROWS[2]},`].join('\n');
    expectFlight(await readUsable(text(16)), [2, 18, 19]);
    const log = await readUsable(text(17));
    expect([...log.line]).toEqual([19, 20]);
    expect(issueOf(log, 'quote-unclosed')).toMatchObject({ firstLine: 2 });
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

  it('rows under another header are left out, until the first one comes again', async () => {
    const other = 'Longitude,Latitude,Time,AltMSL (ft)';
    const log = await readUsable(
      [HEADER, ROWS[0], other, '8,47,2024-05-01T10:00:00Z,1', ROWS[2], HEADER, ROWS[1], ROWS[2], other].join(
        '\n',
      ),
    );
    expectFlight(log, [2, 7, 8]);
    expect([log.breaks, log.rowsSeen]).toEqual([[1], 5]);
    expect(issueOf(log, 'row-under-other-header')).toMatchObject({
      severity: 'warning',
      count: 2,
      firstLine: 4,
    });
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
