import { describe, expect, it } from 'vitest';
import { parseFacility } from '../../../core/facility/parse-facility.ts';
import { draftFromRecords } from '../../../core/records/draft-from-records.ts';
import type { Drafted } from '../../../core/records/drafted.ts';
import { RECORDS_ISSUES, type RecordsIssueCode } from '../../../core/records/issue-codes.ts';
import type { RecordsIndex } from '../../../core/records/records-index.ts';
import { regionRecords } from '../../support/records/fictional-region.ts';
import { sourceFiles } from '../../house/source-files.ts';
import { PETRELHOLM } from '../../support/samples/petrelholm.ts';
import { WHIMBRELNESS } from '../../support/samples/whimbrelness.ts';
import { codesOf, indexOf, wholeDraft, withColumns } from './reading.ts';

const LINES = regionRecords().trimEnd().split('\n');
const AT = { airport: 'XPEH', localizer: 'IZPE' };

/** The region with some lines otherwise; null leaves a line out. */
function changed(change: (line: string) => string | readonly string[] | null): string[] {
  return LINES.flatMap((line) => change(line) ?? []);
}
const whereIt = (starts: string, change: (line: string) => string | readonly string[] | null) =>
  changed((line) => (line.startsWith(starts) ? change(line) : line));

const LOCALIZER = 'SXXXP XPEHX1IIZPE';
const RUNWAY = 'SXXXP XPEHX1GRW07';
const OPPOSITE = 'SXXXP XPEHX1GRW25';
const LEGS = 'SXXXP XPEHX1FI07';

async function draftOf(lines: readonly string[]): Promise<Drafted> {
  return draftFromRecords(await indexOf(...lines), AT);
}

/** Every value of an object, by its path. */
function leaves(value: unknown, path = ''): string[] {
  if (typeof value !== 'object' || value === null) return [path];
  return Object.entries(value).flatMap(([key, inner]) => leaves(inner, path === '' ? key : `${path}.${key}`));
}

describe('the facility of an aerodrome out of its records', async () => {
  const index = await indexOf(...LINES);

  it('is the one that the records were made of, as far as they hold it', () => {
    const { facility, issues } = wholeDraft(index, { ...AT, onDay: '2026-03-14' });
    const near = (places: { latDeg: number; lonDeg: number }) => ({
      // A hundredth of a second, halved.
      latDeg: expect.closeTo(places.latDeg, 5),
      lonDeg: expect.closeTo(places.lonDeg, 5),
    });
    expect(facility).toEqual({
      format: 'halfdot-facility/1',
      name: 'XPEH ILS 07',
      ident: 'IZPE',
      frequencyMHz: 110.95,
      airportElevationFt: 46,
      runway: {
        designator: '07',
        threshold: PETRELHOLM.runway.threshold,
        farEnd: { ...near(PETRELHOLM.runway.farEnd), elevationFt: 46 },
        lengthFt: 6500,
        widthFt: 150,
      },
      localizer: { antenna: expect.anything(), courseWidthDeg: 5.34, courseMagneticDeg: 70 },
      glidepath: { angleDeg: 3, thresholdCrossingHeightFt: 52, antenna: expect.anything() },
      finalApproachFix: PETRELHOLM.finalApproachFix,
      missedApproach: { climbToFt: 2000 },
      magneticVariationDeg: -23.6,
    });
    expect(issues).toEqual([]);
  });

  it('is offset where the localizer is, with the course by bearing and declination', () => {
    const { facility, issues, drafted } = wholeDraft(index, { airport: 'XWHN', localizer: 'IZWH' });
    expect(facility.localizer).toMatchObject({
      courseTrueDeg: WHIMBRELNESS.localizer.courseTrueDeg,
      courseMagneticDeg: 133.1,
    });
    expect(codesOf(issues)).toEqual(['facility-offset']);
    expect(drafted.origins['localizer.courseTrueDeg']).toBe(
      'computed from the magnetic bearing of the localizer and the variation that it was assigned (official records, cycle 2602)',
    );
    expect(facility.finalApproachFix).toEqual({ name: 'WEMLO', distanceNm: 4.5, altitudeFt: 1600 });
  });

  it('says of every value where it is from, and of nothing else', () => {
    for (const [airport, localizer] of [
      ['XPEH', 'IZPE'],
      ['XWHN', 'IZWH'],
    ] as const) {
      const { facility, origins } = draftFromRecords(index, { airport, localizer });
      const { format: _, ...values } = facility;
      expect(Object.keys(origins).toSorted()).toEqual(leaves(values).toSorted());
      for (const origin of Object.values(origins))
        expect(origin).toMatch(
          /^(?:official record, cycle 2602: |computed from .* \(official records, cycle 2602\)$)/,
        );
    }
  });

  it('is good for a day of its cycle, and says so of any other', () => {
    expect(codesOf(draftFromRecords(index, { ...AT, onDay: '2026-03-18' }).issues)).toEqual([]);
    expect(codesOf(draftFromRecords(index, { ...AT, onDay: '2026-03-19' }).issues)).toEqual([
      'records-cycle-past',
    ]);
    expect(codesOf(draftFromRecords(index, AT).issues)).toEqual([]);
  });
});

describe('a course near the runway', () => {
  const bearing = (text: string) => whereIt(LOCALIZER, (line) => withColumns(line, 52, text));

  it('is taken for the runway where the antenna stands on the centreline: bearings are rounded', async () => {
    const index = await indexOf(...bearing('0708'));
    expect(wholeDraft(index, AT).facility.localizer!.courseTrueDeg).toBeUndefined();
  });

  it('is offset where it is more than a degree off, whatever the antenna', async () => {
    const index = await indexOf(...bearing('0712'));
    expect(wholeDraft(index, AT).facility.localizer!.courseTrueDeg).toBe(47.6);
  });

  it('is offset from 0.3° on where the antenna stands aside', async () => {
    const aside = bearing('0706').map((line) =>
      // 180 ft to the left, 1.4° seen from the threshold.
      line.startsWith(LOCALIZER) ? withColumns(line, 33, 'S31110740W016225894') : line,
    );
    const index = await indexOf(...aside);
    const { facility } = wholeDraft(index, AT);
    expect(facility.localizer!.courseTrueDeg).toBe(47);
  });

  it('may be given as true, and then gives the magnetic one', async () => {
    const index = await indexOf(...bearing('049T'));
    const { facility, drafted } = wholeDraft(index, AT);
    expect(facility.localizer).toMatchObject({ courseTrueDeg: 49, courseMagneticDeg: 72.6 });
    expect(drafted.origins['localizer.courseTrueDeg']).toContain('official record');
  });

  it('goes by the declination of the airport where the localizer has none', async () => {
    const index = await indexOf(...whereIt(LOCALIZER, (line) => withColumns(line, 91, '     ')));
    const { facility, drafted } = wholeDraft(index, AT);
    expect(facility.magneticVariationDeg).toBe(-23.6);
    expect(drafted.origins['magneticVariationDeg']).toBe('official record, cycle 2602: airport');
  });
});

/** For each code about a facility a region in which it is said. */
const SAID: Readonly<Partial<Record<RecordsIssueCode, readonly string[]>>> = {
  'records-no-runway': whereIt(RUNWAY, () => null),
  'records-no-elevation': whereIt(RUNWAY, (line) => withColumns(line, 67, '     ')),
  'records-no-far-end': whereIt(OPPOSITE, () => null),
  'records-no-crossing-height': changed((line) => {
    if (line.startsWith(LOCALIZER)) return withColumns(line, 96, '  ');
    return line.startsWith(RUNWAY) ? withColumns(line, 81, 'V') : line;
  }),
  'records-no-fix': whereIt(LEGS, () => null),
  'records-fix-place-unknown': whereIt('SXXXP XPEHX1CPETRU', () => null),
  'records-antenna-disagrees': whereIt(LOCALIZER, (line) => withColumns(line, 75, '1200')),
  'records-angle-disagrees': whereIt(`${LEGS}   I      030`, (line) => withColumns(line, 103, '-310')),
  'records-crossing-altitude-disagrees': whereIt(`${LEGS}   I      030`, (line) =>
    withColumns(line, 85, '00096'),
  ),
  'records-leg-disagrees': whereIt(`${LEGS}   I      030`, (line) => withColumns(line, 75, '0062')),
  'records-procedures-disagree': whereIt(`${LEGS}   I`, (line) => [
    line,
    withColumns(line.replace(' 01700', ' 01900').replace('H 01700', 'H 01900'), 14, 'I07Z '),
  ]),
};

describe('records that are not whole', () => {
  it.each(Object.entries(SAID))('%s is said, with its severity', async (code, lines) => {
    const { issues } = await draftOf(lines);
    expect(issues.find((found) => found.code === code)?.severity).toBe(
      RECORDS_ISSUES[code as RecordsIssueCode][0],
    );
    expect(codesOf((await draftOf(LINES)).issues)).not.toContain(code);
  });

  it('without the runway are no facility, and have no threshold made up', async () => {
    const { facility } = await draftOf(SAID['records-no-runway']!);
    expect(facility.runway).toEqual({ designator: '07' });
    expect(parseFacility(JSON.stringify(facility), 'x')).toMatchObject({ ok: false });
    expect(facility.finalApproachFix).toMatchObject({ distanceNm: 5 });
  });

  it('without the other end go by bearing and length', async () => {
    const index = await indexOf(...SAID['records-no-far-end']!);
    const { facility, drafted, geometry } = wholeDraft(index, AT);
    expect(facility.runway).toMatchObject({ trueBearingDeg: 46.4, lengthFt: 6500 });
    expect(facility.runway.farEnd).toBeUndefined();
    expect(drafted.origins['runway.trueBearingDeg']).toContain(
      'computed from the magnetic bearing of runway 07',
    );
    expect(geometry.farEnd.latDeg).toBeCloseTo(PETRELHOLM.runway.farEnd.latDeg, 5);
  });

  it('take the crossing height of the runway where it is that of the glideslope', async () => {
    const lines = whereIt(LOCALIZER, (line) => withColumns(line, 96, '  '));
    const { facility, origins } = await draftOf(lines);
    expect(facility.glidepath?.thresholdCrossingHeightFt).toBe(52);
    expect(origins['glidepath.thresholdCrossingHeightFt']).toBe('official record, cycle 2602: runway 07');
  });

  it('leave the glidepath antenna out where its elevation is not known', async () => {
    const { facility } = await draftOf(whereIt(LOCALIZER, (line) => withColumns(line, 98, '     ')));
    expect(facility.glidepath).toEqual({ angleDeg: 3, thresholdCrossingHeightFt: 52 });
  });

  it('have a DME reading only where the localizer has a DME', async () => {
    const { facility } = await draftOf(whereIt('SXXXD ', () => null));
    expect(facility.finalApproachFix).toEqual({ name: 'PETRU', distanceNm: 5, altitudeFt: 1700 });
  });

  it('have no missed approach altitude where it does not end in a hold at or above one', async () => {
    const last = `${LEGS}   I      060`;
    for (const lines of [
      whereIt(last, (line) => withColumns(line, 48, 'CF')),
      whereIt(last, (line) => withColumns(line, 83, '-')),
      whereIt(last, () => null),
    ])
      expect((await draftOf(lines)).facility.missedApproach).toBeUndefined();
  });
});

describe('several procedures down one localizer', async () => {
  const index = await indexOf(...SAID['records-procedures-disagree']!);

  it('that disagree leave the fix to the user', () => {
    const { facility } = draftFromRecords(index, AT);
    expect(facility.finalApproachFix).toBeUndefined();
    expect(facility.missedApproach).toEqual({ climbToFt: 2000 });
  });

  it('are one where it is named', () => {
    const altitude = (procedure: string) =>
      draftFromRecords(index, { ...AT, procedure }).facility.finalApproachFix?.altitudeFt;
    expect([altitude('I07'), altitude('I07Z')]).toEqual([1700, 1900]);
  });

  it('that agree are all named as the origin', async () => {
    const twice = whereIt(`${LEGS}   I`, (line) => [line, withColumns(line, 14, 'I07Y')]);
    const { facility, origins } = await draftOf(twice);
    expect(facility.finalApproachFix).toEqual(PETRELHOLM.finalApproachFix);
    expect(origins['finalApproachFix.name']).toBe('official record, cycle 2602: approach I07 and I07Y');
  });
});

describe('what there is no facility of', async () => {
  const index: RecordsIndex = await indexOf(...LINES);
  it.each([
    ['records-airport-unknown', { airport: 'XNON', localizer: 'IZPE' }],
    ['records-localizer-unknown', { airport: 'XPEH', localizer: 'IZWH' }],
    ['records-no-glideslope', { airport: 'XDOS', localizer: 'IZDS' }],
    ['records-procedure-unknown', { ...AT, procedure: 'I25' }],
  ] as const)('%s', (code, choice) => {
    const { facility, origins, issues } = draftFromRecords(index, choice);
    expect({ facility, origins }).toEqual({ facility: {}, origins: {} });
    expect(issues).toMatchObject([{ code, severity: 'refusal' }]);
  });

  it('every code of the room is said by some test of it', () => {
    const tests = sourceFiles('tests/core/records')
      .map(({ text }) => text)
      .join('\n');
    expect(Object.keys(RECORDS_ISSUES).filter((code) => !tests.includes(`'${code}'`))).toEqual([]);
  });
});
