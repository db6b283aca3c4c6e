import { describe, expect, it } from 'vitest';
import { QUANTITIES, TIME_ROLES } from '../../../core/log/log.ts';
import { unitsOffered, unitSuits } from '../../../core/log/offered-units.ts';
import { UNIT_NAMES, unitInWords } from '../../../core/log/stated-units.ts';
import { FT_PER_M } from './one-flight.ts';
import { codes, issueOf, readRefused, readUsable } from './reading.ts';

const row = (header: string, ...values: readonly (number | string)[]) =>
  `Time,Lat,Lon,${header}\n2024-05-01T10:00:00Z,1,2,${values.join(',')}`;

describe('a unit that the user states', () => {
  it('is read in place of an assumed one, and nothing is assumed any more', async () => {
    const text = row('GPS altitude', 300);
    const open = await readUsable(text);
    expect(open.values.altitudeGeometricFt![0]).toBe(300);
    expect(codes(open)).toEqual(['unit-assumed']);
    expect(open.columns[3]).toMatchObject({ unitText: null, unitRead: { name: 'ft', from: 'assumed' } });
    const said = await readUsable(text, { units: { 'GPS altitude': 'm' } });
    expect(said.values.altitudeGeometricFt![0]).toBeCloseTo(300 * FT_PER_M, 9);
    expect(codes(said)).toEqual([]);
    expect(said.columns[3]).toMatchObject({
      unitText: null,
      unitRead: { name: 'm', from: 'user' },
      why: 'the header says altitude gnss; the user said that it is in m',
    });
    expect(said.columns[3]!.confidence).toBeGreaterThan(open.columns[3]!.confidence);
  });

  it.each([
    ['GPS altitude (ft)', 'in brackets'],
    ['GPS altitude ft', 'in the name'],
  ])('wins over that of the header %s, which is said', async (header) => {
    const log = await readUsable(row(header, 300), { units: { [header]: 'metres' } });
    expect(log.values.altitudeGeometricFt![0]).toBeCloseTo(300 * FT_PER_M, 9);
    expect(log.columns[3]).toMatchObject({ unitText: 'ft', unitRead: { name: 'm', from: 'user' } });
    expect(issueOf(log, 'unit-over-header')!.message).toBe(
      `Column "${header}" names the unit "ft": it is read in m, as the user said.`,
    );
  });

  it('wins over a row of units, and is no contradiction where it is the same', async () => {
    const text = 'Time,Lat,Lon,GPS altitude\n,deg,deg,ft\n2024-05-01T10:00:00Z,1,2,300';
    const metres = await readUsable(text, { units: { 'GPS altitude': 'm' } });
    expect(metres.values.altitudeGeometricFt![0]).toBeCloseTo(300 * FT_PER_M, 9);
    expect(codes(metres)).toEqual(['unit-over-header']);
    expect(codes(await readUsable(text, { units: { 'GPS altitude': 'feet' } }))).toEqual([]);
  });

  it('makes sense of a header whose own unit kept it from being used', async () => {
    const text = row('GPS alt (ft),Ground speed (m)', 1000, 36);
    expect((await readUsable(text)).values.groundspeedKt).toBeUndefined();
    const said = await readUsable(text, { units: { 'Ground speed (m)': 'km/h' } });
    expect(said.values.groundspeedKt![0]).toBeCloseTo(36 / 1.852, 9);
  });

  it.each([
    ['km/h', 185.2],
    ['mph', 115.078],
    ['m/s', 51.444],
    ['kt', 100],
  ])('of speeds may be %s, over what the positions would show', async (unit, speed) => {
    const text = row('GPS alt (ft),Ground speed,IAS', 1000, speed, speed);
    const log = await readUsable(text, { units: { 'Ground speed': unit, IAS: unit } });
    expect(log.values.groundspeedKt![0]).toBeCloseTo(100, 2);
    expect(log.values.airspeedIndicatedKt![0]).toBeCloseTo(100, 2);
    expect(codes(log)).toEqual([]);
  });

  it('counts for its siblings as one of the header does', async () => {
    const log = await readUsable(row('GPS altitude,VS', 1000, 2), { units: { 'GPS altitude': 'm' } });
    expect(log.values.verticalSpeedFpm![0]).toBeCloseTo(2 * 60 * FT_PER_M, 6);
    expect(log.columns[4]!.unitRead).toEqual({ name: 'm/s', from: 'others' });
  });

  it('of a needle is taken, over dots that a header leaves open', async () => {
    const text = row('AltMSL (ft),LOC dev (dots)', 3, 1);
    const log = await readUsable(text, { units: { 'LOC dev (dots)': 'dots of 5' } });
    expect(log.values.localizerRecordedFullScale![0]).toBeCloseTo(0.2, 12);
    expect(log.columns[4]!.unitRead).toEqual({ name: 'dots of 5', from: 'user' });
    const open = await readUsable(text);
    expect(open.columns[4]!.unitRead).toEqual({ name: 'dots of 2', from: 'assumed' });
  });

  it('that a header names for a needle and that fits none does not scale it', async () => {
    const log = await readUsable(row('AltMSL (ft),Foo (kt)', 3, 1), {
      columns: { 'Foo (kt)': 'localizerRecordedFullScale' },
    });
    expect(log.values.localizerRecordedFullScale![0]).toBe(1);
  });

  it('of a position or of a count of time is taken', async () => {
    const text = 'Elapsed,Lat,Lon,AltMSL (ft)\n0,560731841,95443718,3\n2000,560731841,95443718,3';
    const log = await readUsable(text, {
      units: { Elapsed: 'ms', Lat: 'semicircles', Lon: 'semicircles' },
      startS: 100,
    });
    expect([...log.timeS]).toEqual([100, 102]);
    expect(log.values.latDeg[0]).toBeCloseTo(47, 6);
    expect(log.values.lonDeg[0]).toBeCloseTo(8, 6);
    expect(log.columns.slice(0, 3).map(({ unitRead }) => unitRead?.name)).toEqual([
      'ms',
      'semicircles',
      'semicircles',
    ]);
  });

  it.each([
    ['°F', 59],
    ['K', 288.15],
    ['°C', 15],
  ])('of a temperature may be %s', async (unit, value) => {
    const log = await readUsable(row('AltMSL (ft),OAT', 3, value), { units: { OAT: unit } });
    expect(log.values.outsideTemperatureC![0]).toBeCloseTo(15, 9);
  });

  it.each([
    ['hPa', 1016],
    ['inHg', 30.002],
  ])('of an altimeter setting may be %s', async (unit, value) => {
    const log = await readUsable(row('AltMSL (ft),QNH', 3, value), { units: { QNH: unit } });
    expect(log.values.altimeterSettingHpa![0]).toBeCloseTo(1016, 1);
  });

  it('is refused where the column cannot be in it, with the units that it can be in', async () => {
    const refusal = await readRefused(row('GPS altitude,Speed', 300, 100), { units: { Speed: 'm' } });
    expect(refusal).toMatchObject({
      code: 'unit-unfit',
      message: 'flight: column "Speed" (groundspeed) cannot be in m, as was stated.',
      tip: 'Units of it are kt, km/h, mph, m/s.',
    });
    const ofTime = await readRefused(row('GPS altitude', 300), { units: { Time: 's' } });
    expect([ofTime.code, ofTime.tip]).toEqual(['unit-unfit', 'It has no unit.']);
    const role = { columns: { Foo: 'altitudeIndicatedFt' }, units: { Foo: 'km/h' } } as const;
    expect((await readRefused(row('Foo', 300), role)).code).toBe('unit-unfit');
    const hdop = await readRefused(row('GPS alt (ft),HDOP', 300, 1), { units: { HDOP: 'm' } });
    expect(hdop.code).toBe('unit-unfit');
  });

  it.each(['parsec', '', 'g', 'psi', 'toString'])('"%s" is refused as none', async (unit) => {
    const refusal = await readRefused(row('GPS altitude', 300), { units: { 'GPS altitude': unit } });
    expect(refusal.code).toBe('unit-unknown');
    expect(refusal.message).toContain(`"${unit}"`);
  });

  it('for a column that is not there, or not used, changes nothing, and that is said', async () => {
    const text = row('GPS alt (ft),Speed,Ground speed (kt)', 300, 100, 100);
    const log = await readUsable(text, { units: { Sped: 'm', Speed: 'km/h' } });
    expect(log.issues.map(({ code, message }) => [code, message])).toEqual([
      [
        'unit-unused',
        'The unit m was stated for column "Sped". That changed nothing: no column of that name is read in a unit.',
      ],
      [
        'unit-unused',
        'The unit km/h was stated for column "Speed". That changed nothing: no column of that name is read in a unit.',
      ],
    ]);
  });
});

describe('how a unit is known', () => {
  it('is told of every column that is read in one', async () => {
    const rows = Array.from({ length: 121 }, (_, i) => `${i},${47 + i / 2160},8,1000,100,2,1013,5,0,1`);
    const log = await readUsable(
      ['Elapsed,Lat,Lon (deg),GPS altitude,Speed,VS (ft/min),QNH,Pitch,HDOP,AGL', ...rows].join('\n'),
    );
    expect(log.columns.map(({ header, unitRead }) => [header, unitRead?.name, unitRead?.from])).toEqual([
      ['Elapsed', 's', 'assumed'],
      ['Lat', 'deg', 'usual'],
      ['Lon (deg)', 'deg', 'header'],
      ['GPS altitude', 'ft', 'others'],
      ['Speed', 'kt', 'others'],
      ['VS (ft/min)', 'ft/min', 'header'],
      ['QNH', 'hPa', 'values'],
      ['Pitch', 'deg', 'usual'],
      ['HDOP', undefined, undefined],
      ['AGL', undefined, undefined],
    ]);
  });

  it('is the positions for a groundspeed that they settle, and an assumption for what follows it', async () => {
    const rows = Array.from({ length: 121 }, (_, i) => `${1714557600 + i},${47 + i / 2160},8,1000,185.2`);
    const log = await readUsable(['Epoch,Lat,Lon,GPS altitude,Speed', ...rows].join('\n'));
    expect(log.columns.map(({ unitRead }) => unitRead).slice(3)).toEqual([
      { name: 'm', from: 'assumed' },
      { name: 'km/h', from: 'positions' },
    ]);
  });
});

describe('the units to choose from', () => {
  it.each(UNIT_NAMES)('%s can be stated by its own name', (name) =>
    expect(unitInWords(name)?.name).toBe(name),
  );

  it.each([...QUANTITIES, ...TIME_ROLES])('all suit %s', (role) => {
    for (const name of unitsOffered(role))
      expect([name, unitSuits(unitInWords(name)!, role)]).toEqual([name, true]);
  });

  it('are there for what is measured in more than one, and not for the rest', () => {
    expect(unitsOffered('altitudeIndicatedFt')).toEqual(['ft', 'm']);
    expect(unitsOffered('elapsed')).toEqual(['s', 'ms', 'µs', 'ns']);
    for (const role of ['dateTime', 'hdop', 'gearDown', 'engineRpm', 'utcOffset'] as const)
      expect(unitsOffered(role)).toEqual([]);
  });
});
