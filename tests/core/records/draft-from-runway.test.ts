import { describe, expect, it } from 'vitest';
import { geodesicBetween } from '../../../core/earth/geodesic.ts';
import { parseFacility } from '../../../core/facility/parse-facility.ts';
import { draftFromRunway } from '../../../core/records/draft-from-runway.ts';
import type { RunwayEnd, RunwayRow } from '../../../core/records/runway-table.ts';
import { CHOUGHFELL } from '../../support/samples/choughfell.ts';
import { PETRELHOLM } from '../../support/samples/petrelholm.ts';
import { runwayTableText, SAMPLE_RUNWAYS } from '../../support/samples/runway-table.ts';
import { tableOf } from './reading-runways.ts';

const rowOf = async (airport: string) =>
  (await tableOf(runwayTableText(SAMPLE_RUNWAYS), airport)).runways[0]!;
const feetApart = (a: { latDeg?: number; lonDeg?: number }, b: { latDeg: number; lonDeg: number }) =>
  geodesicBetween({ latDeg: a.latDeg!, lonDeg: a.lonDeg! }, b).distanceM / 0.3048;
const codesOf = ({ issues }: { issues: readonly { code: string }[] }) => issues.map(({ code }) => code);

/** 6,000 ft to the east along the equator, where a minute of longitude is 6087.1 ft (WGS84, computed). */
const END: RunwayEnd = {
  ident: '09',
  position: { latDeg: 0, lonDeg: 10 },
  elevationFt: 100,
  headingTrueDeg: 90,
  displacedThresholdFt: 0,
};
const ROW: RunwayRow = {
  line: 7,
  airportIdent: 'ZZEQ',
  lengthFt: 6000,
  widthFt: 148,
  surface: 'ASP',
  halfStepDeg: 0.0000005,
  low: END,
  high: {
    ...END,
    ident: '27',
    position: { latDeg: 0, lonDeg: 10.016428 },
    elevationFt: 160,
    headingTrueDeg: 270,
  },
};
const draft = (row: Partial<RunwayRow>, low: Partial<RunwayEnd> = {}) =>
  draftFromRunway({ ...ROW, ...row, low: { ...END, ...low } }, 'low');

describe('a draft from a row of the table', () => {
  it('is the runway as the facility file has it, each value with from where it is', async () => {
    const { facility, origins, mayBeOff } = draftFromRunway(await rowOf('ZZPE'), 'low');
    const { threshold, farEnd } = PETRELHOLM.runway;
    expect(facility).toEqual({
      format: 'halfdot-facility/1',
      name: 'ZZPE 07',
      runway: {
        designator: '07',
        threshold,
        farEnd: { latDeg: -31.187676, lonDeg: -16.384948, elevationFt: 46 },
        lengthFt: 6500,
        widthFt: 150,
      },
    });
    expect(feetApart(facility.runway!.farEnd!, farEnd)).toBeLessThan(0.3);
    expect(origins['runway.threshold.latDeg']).toBe('open airports dataset, runways table (line 2)');
    expect(Object.keys(origins).filter((path) => path.startsWith('runway'))).toHaveLength(9);
    // Half of a millionth of a degree, 0.18 ft, to the north and to the east: √2 × 0.18.
    expect(mayBeOff!['runway.threshold']).toBeCloseTo(0.258, 3);
  });

  it('says that all of it is second-hand, and nothing more where all of it agrees', async () => {
    expect(draftFromRunway(await rowOf('ZZPE'), 'low').issues).toMatchObject([
      { code: 'runway-second-hand', severity: 'caution' },
    ]);
    for (const [airport, end] of [
      ['ZZPE', 'high'],
      ['ZZCH', 'low'],
      ['ZZCH', 'high'],
      ['ZZWH', 'low'],
    ] as const)
      expect(codesOf(draftFromRunway(await rowOf(airport), end))).toEqual(['runway-second-hand']);
  });

  it('has the landing threshold where the pavement begins 600 ft before it', async () => {
    const { facility, origins } = draftFromRunway(await rowOf('ZZCH'), 'high');
    const { threshold, farEnd } = CHOUGHFELL.runway;
    // Six decimals of a degree are a third of a foot; whole feet of elevation, half a foot.
    expect(feetApart(facility.runway!.threshold!, threshold)).toBeLessThan(0.5);
    expect(Math.abs(facility.runway!.threshold!.elevationFt! - threshold.elevationFt)).toBeLessThan(0.5);
    expect(feetApart(facility.runway!.farEnd!, farEnd)).toBeLessThan(0.5);
    expect(facility.runway!.lengthFt).toBe(9000);
    expect(origins['runway.threshold.latDeg']).toContain(
      'moved 600 ft along the runway to the displaced threshold',
    );
    expect(origins['runway.lengthFt']).toContain('less 600 ft');
  });

  it('ends where the pavement does, though the threshold of the other direction is displaced', async () => {
    const { facility } = draftFromRunway(await rowOf('ZZCH'), 'low');
    expect(facility.runway!.lengthFt).toBe(9600);
    const ends = facility.runway!;
    expect(feetApart(ends.threshold!, ends.farEnd as { latDeg: number; lonDeg: number })).toBeCloseTo(
      9600,
      -1,
    );
  });

  it('is a facility once the glidepath is entered', async () => {
    const { facility } = draftFromRunway(await rowOf('ZZCH'), 'high');
    const glidepath = { angleDeg: 3, thresholdCrossingHeightFt: 50 };
    const text = JSON.stringify({ ...facility, glidepath });
    expect(parseFacility(text, 'made.json').ok).toBe(true);
    expect(Object.keys(facility)).toEqual(['format', 'name', 'runway']);
  });

  it('has the elevation of a displaced threshold from both ends, and from one of them none', () => {
    // A quarter of the way up from 100 to 160 ft.
    expect(draft({}, { displacedThresholdFt: 1500 }).facility.runway!.threshold!.elevationFt).toBeCloseTo(
      115,
      1,
    );
    const alone = draft({ high: { ...ROW.high, elevationFt: null } }, { displacedThresholdFt: 1500 });
    expect(alone.facility.runway!.threshold).not.toHaveProperty('elevationFt');
    expect(codesOf(alone)).toContain('runway-elevation-unknown');
  });

  it('guesses no elevation', () => {
    const { facility, origins, issues } = draft({}, { elevationFt: null });
    expect(facility.runway!.threshold).toEqual(END.position);
    expect(origins).not.toHaveProperty('runway.threshold.elevationFt');
    expect(codesOf({ issues })).toContain('runway-elevation-unknown');
  });

  it('goes by the heading where one end alone has a position', () => {
    const { facility } = draft({ high: { ...ROW.high, position: null } }, { displacedThresholdFt: 600 });
    expect(facility.runway).toMatchObject({ trueBearingDeg: 90, lengthFt: 5400 });
    expect(facility.runway).not.toHaveProperty('farEnd');
    expect(facility.runway!.threshold!.lonDeg).toBeCloseTo(10 + 600 / 6087.1 / 60, 5);
  });

  it.each([
    ['its end has no position', {}, { position: null }],
    ['its displacement is no number', {}, { displacedThresholdFt: null }],
    ['it is displaced beyond the far end', {}, { displacedThresholdFt: 6001 }],
    [
      'it is displaced, and nothing tells in which direction',
      { high: { ...ROW.high, position: null } },
      { displacedThresholdFt: 600, headingTrueDeg: null },
    ],
  ])('has no threshold where %s', (_, row, low) => {
    const made = draft(row, low);
    expect(made.facility.runway).not.toHaveProperty('threshold');
    expect(codesOf(made)).toContain('runway-threshold-unknown');
  });

  it('leaves out what names no direction, as of water and helipads', () => {
    for (const ident of ['H1', 'N', '00', '37', ''])
      expect(draft({}, { ident }).facility.runway).not.toHaveProperty('designator');
    for (const ident of ['9', '09', '36R', '13T'])
      expect(draft({}, { ident }).facility.runway!.designator).toBe(ident);
  });
});

describe('a row that contradicts itself', () => {
  it('has its ends exchanged', () => {
    const made = draft({ high: { ...ROW.high, ident: '09' } }, { ident: '27', headingTrueDeg: 270 });
    expect(codesOf(made)).toContain('runway-ends-exchanged');
    expect(made.issues.at(-1)!.message).toBe(
      'From end to end 27 lies 090.0 true: the positions of the two ends look exchanged.',
    );
  });

  it('has a heading that is not where its ends lie', () => {
    expect(codesOf(draft({}, { headingTrueDeg: 93 }))).not.toContain('runway-heading-disagrees');
    expect(codesOf(draft({}, { headingTrueDeg: 93.5 }))).toContain('runway-heading-disagrees');
  });

  it('has a length that is not as far as its ends lie apart', () => {
    expect(codesOf(draft({ lengthFt: 6055 }))).not.toContain('runway-length-disagrees');
    const { issues } = draft({ lengthFt: 6100 });
    expect(issues.at(-1)).toMatchObject({
      code: 'runway-length-disagrees',
      message: 'The two ends lie 6,000 ft apart, but the row gives a length of 6,100 ft.',
    });
  });

  it('may have the positions of thresholds where those of ends are meant', () => {
    const { issues } = draft({ lengthFt: 6800 }, { displacedThresholdFt: 800 });
    expect(issues.at(-1)!.tip).toContain('the positions may already be theirs');
  });

  it('is coarse where its positions are', () => {
    const { issues, mayBeOff } = draft({ halfStepDeg: 0.00005 });
    expect(issues.at(-1)).toMatchObject({
      code: 'runway-position-coarse',
      message:
        'The positions are written to 0.0001°: they may be off by 18 ft north or south for that alone.',
    });
    expect(mayBeOff!['runway.threshold']).toBeCloseTo(25.8, 1);
  });
});
