import { describe, expect, it } from 'vitest';
import type { ColumnRole, LogColumn } from '../../core/log/log.ts';
import { NO_NOTES } from '../../electron/bridge/no-notes.ts';
import {
  remembered,
  roleNow,
  unitNow,
  withRemembered,
  withRole,
  withUnit,
} from '../../renderer/state/mapping.ts';

const column = (index: number, header: string, role: ColumnRole | null): LogColumn => ({
  index,
  header,
  role,
  unitText: null,
  unitRead: null,
  confidence: 0.9,
  why: '',
});
const LAT = column(0, 'Lat', 'latDeg');
const ALT = column(1, 'Alt', 'altitudeUnnamedFt');
const NAMED = column(2, 'constructor', null);
const COLUMNS = [LAT, ALT, NAMED];

describe('what the user says of columns', () => {
  it('is what counts at once, though the log says something else until it is read anew', () => {
    const said = { columns: { Alt: null }, units: { Alt: 'm' } };
    expect([roleNow(said, ALT), roleNow(said, LAT), roleNow({}, ALT)]).toEqual([
      null,
      'latDeg',
      'altitudeUnnamedFt',
    ]);
    expect([unitNow(said, ALT), unitNow(said, LAT), unitNow({}, ALT)]).toEqual(['m', null, null]);
    expect([roleNow(said, NAMED), unitNow(said, NAMED)]).toEqual([null, null]);
  });

  it('changes one role and keeps the others, those said before among them', () => {
    const once = withRole(COLUMNS, {}, ALT, 'altitudePressureFt');
    expect(once).toEqual({ columns: { Lat: 'latDeg', Alt: 'altitudePressureFt', constructor: null } });
    expect(withRole(COLUMNS, once, LAT, null).columns).toEqual({
      Lat: null,
      Alt: 'altitudePressureFt',
      constructor: null,
    });
  });

  it('changes one unit alone: no column is taken for what it is on the user’s word by that', () => {
    const once = withUnit({}, ALT, 'm');
    expect(once).toEqual({ units: { Alt: 'm' } });
    expect(withUnit(once, LAT, 'semicircles')).toEqual({ units: { Alt: 'm', Lat: 'semicircles' } });
    expect(withUnit(once, ALT, 'ft')).toEqual({ units: { Alt: 'ft' } });
    expect(withUnit({ ...once, columns: { Lat: null } }, ALT, null)).toEqual({
      columns: { Lat: null },
      units: {},
    });
  });

  it('lets a unit go that the new role cannot have, and keeps one that it can', () => {
    const said = { units: { Alt: 'm', Lat: 'semicircles' } };
    expect(withRole(COLUMNS, said, ALT, 'altitudePressureFt').units).toEqual(said.units);
    expect(withRole(COLUMNS, said, ALT, 'groundspeedKt').units).toEqual({ Lat: 'semicircles' });
    expect(withRole(COLUMNS, said, ALT, null).units).toEqual({ Lat: 'semicircles' });
  });
});

describe('what is remembered for headers', () => {
  it('is what was said of them, and nothing for others', () => {
    const notes = withRemembered(NO_NOTES, 'key', { columns: { Alt: null }, units: { Lat: 'deg' } });
    expect(remembered(notes, 'key')).toEqual({ columns: { Alt: null }, units: { Lat: 'deg' } });
    expect(remembered(notes, 'other')).toBeNull();
    expect(remembered(NO_NOTES, 'key')).toBeNull();
  });

  it('is units alone where no role was said, and goes with the last unit', () => {
    const notes = withRemembered(NO_NOTES, 'key', { units: { Alt: 'm' } });
    expect(notes.mappings).toEqual({});
    expect(remembered(notes, 'key')).toEqual({ units: { Alt: 'm' } });
    expect(withRemembered(notes, 'key', { units: {} })).toEqual(NO_NOTES);
  });

  it('leaves what is remembered for other headers', () => {
    const first = withRemembered(NO_NOTES, 'a', { columns: { Alt: null }, units: { Alt: 'm' } });
    const both = withRemembered(first, 'b', { columns: { Lat: null } });
    expect(remembered(both, 'a')).toEqual({ columns: { Alt: null }, units: { Alt: 'm' } });
    expect(remembered(both, 'b')).toEqual({ columns: { Lat: null } });
  });
});
