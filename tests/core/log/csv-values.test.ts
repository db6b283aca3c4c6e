import { describe, expect, it } from 'vitest';
import { expectFlight, HEADER, PLAIN, ROWS } from './one-flight.ts';
import { issueOf, readUsable } from './reading.ts';

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

  it('999 is a mark for an unknown speed in every unit, and 99999 for an unknown height', async () => {
    const log = await readUsable(
      'Time,Lat,Lon,AltMSL (ft),GS (km/h),IAS (m/s),VS (m/s)\n2024-05-01T10:00:00Z,47,8,99999,999,999,99.9\n2024-05-01T10:00:01Z,47,8,45000,998,99,-1',
    );
    expect([...log.values.altitudeGeometricFt!]).toEqual([NaN, 45000]);
    expect(log.values.groundspeedKt![0]).toBeNaN();
    expect(log.values.groundspeedKt![1]).toBeCloseTo(538.877, 3);
    expect(log.values.airspeedIndicatedKt![0]).toBeNaN();
    expect(log.values.verticalSpeedFpm![0]).toBeCloseTo(19665.354, 3);
    expect(log.issues.map(({ code, count }) => [code, count])).toEqual([
      ['value-marked-invalid', 1],
      ['value-marked-invalid', 1],
      ['value-marked-invalid', 1],
    ]);
  });

  it('empty cells and words for nothing are unknown and no fault; other text is counted by column', async () => {
    const log = await readUsable(
      'Time,Lat,Lon,AltMSL (ft),GS (kt)\n2024-05-01T10:00:00Z,47.1,8.1,,NaN\n2024-05-01T10:00:01Z,47.1,8.1,---,n/a\n2024-05-01T10:00:02Z,47.1,8.1,3x,80\n2024-05-01T10:00:03Z,47.1,8.1,0x10,Infinity\n2024-05-01T10:00:04Z,47.1,8.1,7,',
    );
    expect([...log.values.altitudeGeometricFt!]).toEqual([NaN, NaN, NaN, NaN, 7]);
    expect([...log.values.groundspeedKt!]).toEqual([NaN, NaN, 80, NaN, NaN]);
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
    ['47.51n', '8.25 w', 47.51, -8.25],
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
