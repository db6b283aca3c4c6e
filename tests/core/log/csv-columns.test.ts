import { describe, expect, it } from 'vitest';
import { FT_PER_M, START_S } from './one-flight.ts';
import { codes, issueOf, readUsable } from './reading.ts';

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
      why: 'the user said so, and that it is in m',
      unitRead: { name: 'm', from: 'user' },
    });
    expect(log.columns[4]!.role).toBeNull();
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

  it('headers that JavaScript knows are names like any other', async () => {
    const log = await readUsable(
      'Time,Lat,Lon,AltMSL (ft),constructor,toString,__proto__\n2024-05-01T10:00:00Z,1,2,3,4,5,6',
      { columns: {}, units: {} },
    );
    expect(log.columns.slice(4).map(({ header, role }) => [header, role])).toEqual([
      ['constructor', null],
      ['toString', null],
      ['__proto__', null],
    ]);
  });

  it('a column that no row has a value of is not used, so that nothing waits for it', async () => {
    const log = await readUsable('Time,Lat,Lon,Alt,GPS alt (ft),VS\n2024-05-01T10:00:00Z,1,2,,3,');
    expect(Object.keys(log.values).toSorted()).toEqual(['altitudeGeometricFt', 'latDeg', 'lonDeg']);
    expect(log.columns.filter(({ role }) => role === null).map(({ header, why }) => [header, why])).toEqual([
      ['Alt', 'no row holds a value of it'],
      ['VS', 'no row holds a value of it'],
    ]);
    expect(log.issues).toEqual([]);
  });

  it('a value that comes late in the file is in its row', async () => {
    const rows = Array.from({ length: 10_000 }, (_, i) => `${START_S + i},1,2,3,${i === 9998 ? 90 : ''}`);
    const log = await readUsable(`Epoch,Lat,Lon,AltMSL (ft),GS (kt)\n${rows.join('\n')}`);
    expect([...log.values.groundspeedKt!].flatMap((kt, i) => (Number.isNaN(kt) ? [] : [[i, kt]]))).toEqual([
      [9998, 90],
    ]);
    expect(log.values.groundspeedKt!.length).toBe(10_000);
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

  it('one that does not fit what the user makes of a column is not taken, and that is said', async () => {
    const log = await readUsable('Time,Lat,Lon,Foo (km/h)\n2024-05-01T10:00:00Z,1,2,1000', {
      columns: { 'Foo (km/h)': 'altitudeIndicatedFt' },
    });
    expect([...log.values.altitudeIndicatedFt!]).toEqual([1000]);
    expect(log.issues.map(({ code, message }) => [code, message])).toEqual([
      [
        'unit-assumed',
        'Column "Foo (km/h)" (indicated altitude) names a unit that does not fit ("km/h"): taken as ft.',
      ],
    ]);
  });

  it('a unit of no time leaves a count in seconds', async () => {
    const log = await readUsable('Foo (km),Lat,Lon,AltMSL (ft)\n0,1,2,3\n2,1,2,3', {
      columns: { 'Foo (km)': 'elapsed' },
    });
    expect([...log.timeS]).toEqual([0, 2]);
  });

  it('metres beside a speed without a unit leave its unit open', async () => {
    const log = await readUsable(
      'Time,Lat,Lon,GPS altitude (m),Ground speed\n2024-05-01T10:00:00Z,1,2,1000,50',
    );
    expect(log.values.groundspeedKt![0]).toBe(50);
    expect(codes(log)).toEqual(['unit-assumed']);
  });
});

describe('a groundspeed without a unit', () => {
  /** A flight northward at 100 kt for two minutes, its speed written as this number. */
  function flight(speed: number | string, header = 'Time,Lat,Lon,GPS altitude,Speed,VS', step = 1) {
    const rows = Array.from({ length: 120 / step + 1 }, (_, i) => {
      const lat = 47 + (100 * i * step) / 3600 / 60;
      return `2024-05-01T10:0${Math.floor((i * step) / 60)}:${String((i * step) % 60).padStart(2, '0')}Z,${lat.toFixed(7)},8,1000,${speed},2`;
    });
    return readUsable([header, ...rows].join('\n'));
  }

  it.each([
    [100, 'kt', 1000, 2],
    [115.1, 'mph', 1000, 2],
    [185.2, 'km/h', 1000 * FT_PER_M, 2 * 60 * FT_PER_M],
    [51.444, 'm/s', 1000 * FT_PER_M, 2 * 60 * FT_PER_M],
  ])(
    'of %d is shown by the way flown to be %s, and the others follow it',
    async (speed, unit, altitudeFt, fpm) => {
      const log = await flight(speed);
      expect(log.values.groundspeedKt![60]).toBeCloseTo(100, 1);
      expect(log.values.altitudeGeometricFt![60]).toBeCloseTo(altitudeFt, 6);
      expect(log.values.verticalSpeedFpm![60]).toBeCloseTo(fpm, 6);
      expect(issueOf(log, 'unit-from-positions')!.message).toBe(
        `Column "Speed" (groundspeed) names no unit: the positions show that it is ${unit}.`,
      );
      expect(codes(log)).toEqual(['unit-assumed', 'unit-from-positions', 'unit-assumed']);
    },
  );

  it('that fits no unit stays assumed as knots', async () => {
    const log = await flight(70);
    expect([log.values.groundspeedKt![60], log.values.altitudeGeometricFt![60]]).toEqual([70, 1000]);
    expect(codes(log)).toEqual(['unit-assumed', 'unit-assumed', 'unit-assumed']);
  });

  it('stays assumed where the fixes are too far apart, or the speed is not there', async () => {
    expect(codes(await flight(185.2, undefined, 20))).not.toContain('unit-from-positions');
    expect(codes(await flight('x'))).not.toContain('unit-from-positions');
  });

  it('stays assumed on a way too short to measure by', async () => {
    const rows = Array.from(
      { length: 9 },
      (_, i) => `2024-05-01T10:00:0${i}Z,${47 + i / 2160},8,1000,185.2,2`,
    );
    expect(codes(await readUsable(['Time,Lat,Lon,GPS altitude,Speed,VS', ...rows].join('\n')))).not.toContain(
      'unit-from-positions',
    );
  });

  it('is not touched when it names its unit', async () => {
    const log = await flight(185.2, 'Time,Lat,Lon,GPS altitude (ft),Speed (kt),VS (m/s)');
    expect(log.values.groundspeedKt![60]).toBe(185.2);
    expect(log.issues).toEqual([]);
  });
});
