import { describe, expect, it } from 'vitest';
import { decodeAirport } from '../../../core/records/airport-record.ts';
import { bearingOf, trueOf, variationOf } from '../../../core/records/bearings.ts';
import { latitudeOf, longitudeOf } from '../../../core/records/coordinates.ts';
import { decodeFix } from '../../../core/records/fix-record.ts';
import { decodeLeg } from '../../../core/records/leg-record.ts';
import {
  decodeLocalizer,
  hasGlideslope,
  localizerKind,
  type LocalizerRecord,
} from '../../../core/records/localizer-record.ts';
import { isContinuation, kindOfRecord } from '../../../core/records/record-kind.ts';
import { decodeRunway } from '../../../core/records/runway-record.ts';
import { oppositeRunway } from '../../../core/records/runway-names.ts';
import { publishedLines, withColumns } from './reading.ts';

const RUNWAY = publishedLines('kbtv').find((line) => line.includes('GRW15'));
const LOCALIZER = publishedLines('kbtv').find((line) => line.startsWith('SUSAP KBTVK6IIBTV'));
const FIX_LEG = publishedLines('kjfk-04r').find((line) => line.includes('EBBEE'));

describe('published records of other kinds (FAA CIFP)', () => {
  it('an airport has a name, an elevation and a variation', () => {
    expect(decodeAirport(publishedLines('kden-airport')[0]!)).toEqual({
      ok: true,
      value: {
        ident: 'KDEN',
        region: 'K2',
        name: 'DENVER INTL',
        latDeg: expect.closeTo(39 + 51 / 60 + 42 / 3600, 9),
        lonDeg: expect.closeTo(-(104 + 40 / 60 + 23.4 / 3600), 9),
        variation: { eastDeg: 8 },
        elevationFt: 5434,
      },
    });
  });

  it('a leg has its fix, its DME, its course, its length and both altitudes', () => {
    expect(decodeLeg(FIX_LEG!)).toEqual({
      ok: true,
      value: {
        airport: 'KJFK',
        procedure: 'I04R',
        routeType: 'I',
        sequence: 20,
        fix: { ident: 'EBBEE', region: 'K6', section: 'PC' },
        isFinalApproachFix: true,
        isMissedApproachPoint: false,
        beginsMissedApproach: false,
        pathTerminator: 'CF',
        navaid: 'IJFK',
        navaidSection: 'PI',
        dmeNm: 6.1,
        course: { deg: 44, isTrue: false },
        distanceNm: 4.9,
        altitudeDescription: 'H',
        altitudeFt: 1500,
        secondAltitudeFt: 1500,
        verticalAngleDeg: null,
      },
    });
  });

  it('a leg that is flown for a time has no length, one to an altitude no fix', () => {
    const legs = publishedLines('kjfk-04r').filter((line) => line.includes('FI04R'));
    const read = legs.map((line) => {
      const leg = decodeLeg(line);
      if (!leg.ok) throw new Error(leg.fault);
      return leg.value;
    });
    expect(read.map(({ distanceNm }) => distanceNm)).toEqual([null, 4.9, 4.5, null, null, 8, null]);
    expect(read.map(({ beginsMissedApproach }) => beginsMissedApproach).indexOf(true)).toBe(3);
    expect(read[2]).toMatchObject({ isMissedApproachPoint: true, verticalAngleDeg: -3, altitudeFt: 65 });
    expect(read[3]).toMatchObject({ fix: null, pathTerminator: 'CA', altitudeFt: 800 });
    expect(read[6]).toMatchObject({ course: { deg: 258.1, isTrue: false }, altitudeFt: 4000 });
  });

  it('waypoints and navaids are places; a navaid without a VOR has the place of its DME', () => {
    const waypoint = publishedLines('kbtv').find((line) => line.includes('CFOVES'));
    const enroute = publishedLines('kbtv').find((line) => line.includes('EAENRT'));
    expect(decodeFix(waypoint!, 'terminal-waypoint')).toMatchObject({
      value: { ident: 'FOVES', region: 'K6', airport: 'KBTV', latDeg: expect.closeTo(44.53685, 6) },
    });
    expect(decodeFix(enroute!, 'enroute-waypoint')).toMatchObject({
      value: { ident: 'WINLA', airport: null, lonDeg: expect.closeTo(-73.20185, 6) },
    });
    expect(decodeFix(publishedLines('dme-only')[0]!, 'vhf-navaid')).toMatchObject({
      value: {
        ident: 'ADK',
        region: 'PA',
        latDeg: expect.closeTo(51.871075, 6),
        lonDeg: expect.closeTo(-176.674275, 6),
      },
    });
    expect(decodeFix(publishedLines('ndb')[0]!, 'enroute-ndb')).toMatchObject({
      value: {
        ident: 'AA',
        region: 'K3',
        latDeg: expect.closeTo(47.009053, 6),
        lonDeg: expect.closeTo(-96.815183, 6),
      },
    });
  });

  it('a localizer alone has no glideslope', () => {
    const record = decodeLocalizer(publishedLines('padl-localizer-only')[0]!);
    if (!record.ok) throw new Error(record.fault);
    expect(record.value).toMatchObject({
      glidepathAntenna: null,
      glidepathAngleDeg: null,
      courseWidthDeg: 5.7,
    });
    expect(hasGlideslope(record.value)).toBe(false);
    expect(localizerKind(record.value)).toBe('LOC');
  });
});

describe('kinds of records', () => {
  it.each([
    [publishedLines('kden-airport')[0]!, 'airport'],
    [RUNWAY!, 'runway'],
    [LOCALIZER!, 'localizer'],
    [FIX_LEG!, 'leg'],
    [publishedLines('ndb')[0]!, 'enroute-ndb'],
    [publishedLines('dme-only')[0]!, 'vhf-navaid'],
    [publishedLines('header-volume')[0]!, 'header'],
    ['SUSAPNKBTVK6   AB    K6', 'terminal-ndb'],
    ['SUSAER       V16         0100LAX', 'other'],
    ['SUSAP KBTVK6DABCDE', 'other'],
    ['hello', null],
    ['', null],
  ])('%s', (line, kind) => expect(kindOfRecord(line)).toBe(kind));

  it('what follows a record is known by its number: column 39 of a leg, column 22 of all others', () => {
    const legs = publishedLines('kbtv').filter((line) => line.includes('FR01'));
    expect(legs.map((line) => isContinuation(line, 'leg'))).toEqual([false, true]);
    expect(isContinuation(RUNWAY!, 'runway')).toBe(false);
    expect(isContinuation(withColumns(RUNWAY!, 22, '1'), 'runway')).toBe(false);
    expect(isContinuation(withColumns(RUNWAY!, 22, '2'), 'runway')).toBe(true);
    expect(isContinuation('SUSAER       V16     9', 'other')).toBe(false);
  });

  it.each([
    ['1', true, 'ILS'],
    ['3', true, 'ILS'],
    ['0', false, 'LOC'],
    ['L', true, 'LDA'],
    ['A', false, 'LDA'],
    ['S', true, 'SDF'],
    ['I', true, 'IGS'],
  ])('category %s with a glideslope %s is called %s', (category, has, kind) => {
    const record = decodeLocalizer(LOCALIZER!);
    if (!record.ok) throw new Error(record.fault);
    const localizer: LocalizerRecord = {
      ...record.value,
      category,
      glidepathAngleDeg: has ? 3 : null,
    };
    expect(localizerKind(localizer)).toBe(kind);
  });
});

describe('fields', () => {
  it.each([
    ['N39493182', 39 + 49 / 60 + 31.82 / 3600],
    ['S00000001', -0.01 / 3600],
    ['N00000000', 0],
    ['S00000000', 0],
    ['N90000000', 90],
    ['N90000001', null],
    ['N39600000', null],
    ['N39596000', null],
    ['X39493182', null],
    ['N3949318', null],
    ['N394931820', null],
    ['N39 93182', null],
  ])('latitude %s is %s', (text, latDeg) => expect(latitudeOf(text)).toBe(latDeg));

  it.each([
    ['W104393810', -(104 + 39 / 60 + 38.1 / 3600)],
    ['E180000000', -180],
    ['W180000000', -180],
    ['E180000001', null],
    ['W0', null],
  ])('longitude %s is %s', (text, lonDeg) => expect(longitudeOf(text)).toBe(lonDeg));

  it.each([
    ['1725', { deg: 172.5, isTrue: false }],
    ['172T', { deg: 172, isTrue: true }],
    ['0000', { deg: 0, isTrue: false }],
    ['3600', { deg: 360, isTrue: false }],
    ['3601', null],
    ['T172', null],
    ['17.5', null],
  ])('bearing %s', (text, bearing) => expect(bearingOf(text)).toEqual(bearing));

  it.each([
    ['E0080', { eastDeg: 8 }],
    ['W0090', { eastDeg: -9 }],
    ['W0000', { eastDeg: 0 }],
    ['T0000', 'true-north'],
    ['E1801', null],
    ['D0010', null],
  ])('variation %s', (text, variation) => expect(variationOf(text)).toEqual(variation));

  it('a bearing is true, magnetic by a declination, or not known', () => {
    expect(trueOf({ deg: 172.5, isTrue: false }, { eastDeg: 8 })).toBe(180.5);
    expect(trueOf({ deg: 77, isTrue: false }, { eastDeg: -9 })).toBe(68);
    expect(trueOf({ deg: 355, isTrue: false }, { eastDeg: 8 })).toBe(3);
    expect(trueOf({ deg: 172, isTrue: true }, { eastDeg: 8 })).toBe(172);
    expect(trueOf({ deg: 172.5, isTrue: false }, 'true-north')).toBe(172.5);
    expect(trueOf({ deg: 172.5, isTrue: false }, null)).toBeNull();
  });

  it.each([
    ['RW17R', 'RW35L'],
    ['RW08', 'RW26'],
    ['RW18', 'RW36'],
    ['RW36C', 'RW18C'],
    ['RW19', 'RW01'],
    ['RW00', null],
    ['RW37', null],
    ['17R', null],
    ['', null],
  ])('opposite to %s lies %s', (runway, opposite) => expect(oppositeRunway(runway)).toBe(opposite));
});

describe('a record that cannot be read', () => {
  it.each([
    ['no threshold', 33, ' '.repeat(19), 'columns 33 to 41 are blank'],
    ['half a threshold', 42, ' '.repeat(10), 'columns 42 to 51 are blank'],
    ['a letter in a latitude', 33, 'N4428A043', 'columns 33 to 41 hold "N4428A043"'],
    ['a length of letters', 23, 'O8319', 'columns 23 to 27 hold "O8319"'],
    ['a blank in a number', 67, '00 06', 'columns 67 to 71 hold "00 06"'],
    ['no runway', 14, '     ', 'columns 14 to 18 are blank'],
  ])('%s: the first columns at fault are told', (_, column, text, fault) => {
    expect(decodeRunway(withColumns(RUNWAY!, column, text))).toEqual({ ok: false, fault });
  });

  it('may lack what is not needed, and its trailing blanks', () => {
    expect(decodeRunway(RUNWAY!.slice(0, 60))).toMatchObject({
      ok: true,
      value: { thresholdElevationFt: null, widthFt: null, displacedThresholdFt: 0, changedInCycle: '' },
    });
    expect(decodeRunway(RUNWAY!.slice(0, 40))).toMatchObject({ ok: false });
  });
});
