import { describe, expect, it } from 'vitest';
import { draftFromRecords } from '../../../core/records/draft-from-records.ts';
import { ilsIn } from '../../../core/records/ils-listing.ts';
import { decodeLeg } from '../../../core/records/leg-record.ts';
import { recordsText } from '../../../core/report/records-text.ts';
import { regionRecords } from '../../support/records/fictional-region.ts';
import { codesOf, indexOf, publishedLines, wholeDraft, withColumns } from './reading.ts';

const LINES = regionRecords().trimEnd().split('\n');
const AT = { airport: 'XPEH', localizer: 'IZPE' };
const LOCALIZER = 'SXXXP XPEHX1IIZPE';
const RUNWAY = 'SXXXP XPEHX1GRW07';
const OPPOSITE = 'SXXXP XPEHX1GRW25';
const AIRPORT = 'SXXXP XPEHX1A';

type Change = (line: string) => string | null;
const withLines = (changes: Readonly<Record<string, Change>>): string[] =>
  LINES.flatMap((line) => {
    const change = Object.entries(changes).find(([starts]) => line.startsWith(starts))?.[1];
    return change === undefined ? line : (change(line) ?? []);
  });
const columns =
  (column: number, text: string): Change =>
  (line) =>
    withColumns(line, column, text);
const gone: Change = () => null;

describe('records of rarer kinds', () => {
  it('of a localizer that is aligned to true north have neither a magnetic course nor a variation', async () => {
    // 046.4 true, with no magnetic bearing anywhere.
    const north: Change = (line) => withColumns(withColumns(line, 52, '0464'), 91, 'T0000');
    const index = await indexOf(...withLines({ [LOCALIZER]: north }));
    const { facility, geometry } = wholeDraft(index, AT);
    expect(facility.localizer!.courseMagneticDeg).toBeUndefined();
    expect(facility.magneticVariationDeg).toBeUndefined();
    expect(geometry.courseTrueDeg).toBeCloseTo(46.4, 1);
  });

  it('of a runway with a true bearing and no other end have it as it stands', async () => {
    const index = await indexOf(...withLines({ [RUNWAY]: columns(28, '046T'), [OPPOSITE]: gone }));
    const { facility, drafted } = wholeDraft(index, AT);
    expect(facility.runway.trueBearingDeg).toBe(46);
    expect(drafted.origins['runway.trueBearingDeg']).toBe('official record, cycle 2602: runway 07');
  });

  it('of a runway without bearing and other end have no direction', async () => {
    const index = await indexOf(...withLines({ [RUNWAY]: columns(28, '    '), [OPPOSITE]: gone }));
    const { facility, issues } = draftFromRecords(index, AT);
    expect(facility.runway).not.toHaveProperty('trueBearingDeg');
    expect(issues.find(({ code }) => code === 'records-no-far-end')?.message).toContain('nor its bearing');
  });

  it('of an opposite threshold that is displaced and has no elevation leave that of the far end out', async () => {
    const displaced: Change = (line) => withColumns(line, 67, '     0300');
    const index = await indexOf(...withLines({ [OPPOSITE]: displaced }));
    const { farEnd } = draftFromRecords(index, AT).facility.runway!;
    expect(Object.keys(farEnd!)).toEqual(['latDeg', 'lonDeg']);
  });

  it('without any declination, airport or bearing have what is left', async () => {
    const bare: Change = (line) => withColumns(withColumns(line, 91, '     '), 52, '    ');
    const index = await indexOf(...withLines({ [LOCALIZER]: bare, [AIRPORT]: gone }));
    const { facility, issues } = wholeDraft(index, AT);
    expect(facility.localizer!.courseMagneticDeg).toBeUndefined();
    expect(facility.airportElevationFt).toBeUndefined();
    expect(codesOf(issues)).toEqual([]);
    expect(ilsIn(index).find(({ localizer }) => localizer === 'IZPE')).toMatchObject({
      airportName: '',
      course: null,
    });
  });

  it('of a file that names no cycle say that it is not known', async () => {
    const index = await indexOf(...LINES.slice(2));
    const { origins, issues } = draftFromRecords(index, { ...AT, onDay: '2026-03-14' });
    expect(origins['ident']).toBe('official record, cycle not known: localizer IZPE');
    expect(codesOf(issues)).toEqual(['records-cycle-unknown']);
    expect(recordsText(index, [])).toContain('Official records, cycle not known: 40 read');
  });

  it('may give an altitude as a flight level', () => {
    const leg = publishedLines('kjfk-04r').find((line) => line.includes('EBBEE'))!;
    expect(decodeLeg(withColumns(leg, 85, 'FL180'))).toMatchObject({ value: { altitudeFt: 18_000 } });
    expect(decodeLeg(withColumns(leg, 85, 'UNKNN'))).toMatchObject({ ok: false });
  });

  it('of a localizer past the approach end are not held to the stop end', async () => {
    const before = await indexOf(...withLines({ [LOCALIZER]: columns(75, '0200+') }));
    expect(codesOf(draftFromRecords(before, AT).issues)).toEqual([]);
  });

  it('of a procedure that marks no fix, or none that is named, leave it out', async () => {
    const leg = 'SXXXP XPEHX1FI07   I      020';
    for (const change of [columns(43, ' '), columns(30, '         ')]) {
      const index = await indexOf(...withLines({ [leg]: change }));
      const { facility, issues } = draftFromRecords(index, AT);
      expect(facility.finalApproachFix).toBeUndefined();
      expect(codesOf(issues)).toEqual(['records-no-fix']);
    }
  });

  it('of a fix without a record whose legs have no length give it without a distance', async () => {
    const index = await indexOf(
      ...withLines({ 'SXXXP XPEHX1CPETRU': gone, 'SXXXP XPEHX1FI07   I      030': columns(75, '    ') }),
    );
    const { facility, issues } = draftFromRecords(index, AT);
    expect(facility.finalApproachFix).toEqual({ name: 'PETRU', altitudeFt: 1700, dmeNm: 6.2 });
    expect(issues[0]!.message).toBe('The file has no place of PETRU.');
  });
});

describe('an index that was kept and has changed since', () => {
  it('gives what can be read of it', async () => {
    const index = await indexOf(...LINES);
    const spoilt = {
      ...index,
      airports: index.airports.map((airport) => ({
        ...airport,
        airport: 'gone',
        runways: ['gone', ...airport.runways],
        legs: ['gone', ...airport.legs],
        fixes: ['gone', ...airport.fixes],
        localizers: ['gone', ...airport.localizers],
      })),
    };
    expect(ilsIn(spoilt)).toHaveLength(3);
    expect(wholeDraft(spoilt, AT).facility.runway.designator).toBe('07');
  });
});
