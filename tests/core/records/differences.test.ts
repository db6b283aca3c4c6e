import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { geodesicFrom } from '../../../core/earth/geodesic.ts';
import { differencesOf } from '../../../core/records/differences.ts';
import { draftFromRunway } from '../../../core/records/draft-from-runway.ts';
import { draftsFromLanding } from '../../../core/records/draft-from-landing.ts';
import type { Drafted } from '../../../core/records/drafted.ts';
import { draftedFrom, leavesOf } from '../../../core/records/leaves.ts';
import { merged } from '../../../core/records/merged.ts';
import { runwayTableText, SAMPLE_RUNWAYS } from '../../support/samples/runway-table.ts';
import { landingOf, recordedBy } from './landed.ts';
import { tableOf } from './reading-runways.ts';

const NAMES = { one: 'the official record', other: 'the open dataset' };

/** A draft of values by their paths, as of one source. */
const draft = (source: string, values: Record<string, string | number>, mayBeOff: Drafted['mayBeOff'] = {}) =>
  draftedFrom(
    Object.entries(values).map(([path, value]) => ({ path, value, origin: source })),
    { issues: [], mayBeOff },
  );
const place = (path: string, { latDeg, lonDeg }: { latDeg: number; lonDeg: number }) => ({
  [`${path}.latDeg`]: latDeg,
  [`${path}.lonDeg`]: lonDeg,
});
const sentences = (one: Drafted, other: Drafted) =>
  differencesOf(one, other, NAMES).map(({ sentence }) => sentence);
const values = (record: Record<string, string | number>) => draft('a record', record);

const HERE = { latDeg: 40, lonDeg: -40 };
const feet = (bearingDeg: number, ft: number, from = HERE) => geodesicFrom(from, bearingDeg, ft * 0.3048);

describe('what two sources differ in', () => {
  it('is where a threshold lies, by the compass where no runway is known', () => {
    const one = values(place('runway.threshold', feet(92, 34)));
    const other = values(place('runway.threshold', HERE));
    expect(sentences(one, other)).toEqual([
      'The threshold lies 34 ft farther east by the official record than by the open dataset.',
    ]);
    expect(sentences(other, one)[0]).toContain('34 ft farther west');
    expect(differencesOf(one, other)[0]).toMatchObject({ path: 'runway.threshold' });
    expect(differencesOf(one, other)[0]!.sentence).toContain('by the first source than by the second');
  });

  it('is where it lies along the runway and across it, where its direction is known', () => {
    const runway = { 'runway.trueBearingDeg': 90 };
    const beside = feet(180, 20, feet(90, 300));
    const one = values({ ...runway, ...place('runway.threshold', beside) });
    const other = values(place('runway.threshold', HERE));
    expect(sentences(one, other)).toEqual([
      'The threshold lies 300 ft farther down the runway and 20 ft farther to the right by the official record than by the open dataset.',
    ]);
    const turned = draft('a record', { ...place('runway.threshold', feet(0, 20)) });
    expect(sentences(turned, values({ ...runway, ...place('runway.threshold', HERE) }))).toEqual([
      'The threshold lies 20 ft farther to the left by the official record than by the open dataset.',
    ]);
    const ends = { ...place('runway.threshold', HERE), ...place('runway.farEnd', feet(90, 6000)) };
    const back = values({ ...ends, ...place('runway.threshold', feet(270, 50)) });
    expect(sentences(back, values(ends))[0]).toContain('50 ft farther back along the runway by');
  });

  it('is nothing finer than the sources are', () => {
    const other = draft('a table', place('runway.threshold', HERE), { 'runway.threshold': 26 });
    const by = (ft: number) => sentences(values(place('runway.threshold', feet(45, ft))), other);
    expect(by(26.9)).toEqual([]);
    expect(by(27.1)).toHaveLength(1);
  });

  it('is what is across alone, where nobody knows how far along it is', () => {
    const off = { 'runway.threshold': { alongFt: 1500, acrossFt: 60 } };
    const landing = (right: number, along: number) =>
      draft(
        'a landing',
        { 'runway.trueBearingDeg': 90, ...place('runway.threshold', feet(180, right, feet(90, along))) },
        off,
      );
    const other = values(place('runway.threshold', HERE));
    expect(sentences(landing(60.5, 1400), other)).toEqual([]);
    expect(sentences(landing(100, 1400), other)).toEqual([
      'The threshold lies 100 ft farther to the right by the official record than by the open dataset.',
    ]);
  });

  it.each([
    [
      'runway.lengthFt',
      6500,
      6501,
      6502,
      'The length of the runway is 6,500 ft by the official record and 6,502 ft by the open dataset.',
    ],
    [
      'runway.threshold.elevationFt',
      34.5,
      35.5,
      36,
      'The elevation of the threshold is 34.5 ft by the official record and 36 ft by the open dataset.',
    ],
    [
      'runway.trueBearingDeg',
      359.96,
      0.05,
      0.1,
      'The true bearing of the runway is 359.96° by the official record and 000.10° by the open dataset.',
    ],
    [
      'localizer.courseMagneticDeg',
      70,
      69,
      68.5,
      'The magnetic course of the localizer is 070.0° by the official record and 068.5° by the open dataset.',
    ],
    [
      'glidepath.angleDeg',
      3,
      3.01,
      3.1,
      'The glidepath angle is 3° by the official record and 3.1° by the open dataset.',
    ],
    [
      'frequencyMHz',
      110.95,
      110.95,
      111,
      'The localizer frequency is 110.95 MHz by the official record and 111.00 MHz by the open dataset.',
    ],
    [
      'finalApproachFix.distanceNm',
      5,
      5.1,
      5.2,
      'The distance of the final approach fix is 5 NM by the official record and 5.2 NM by the open dataset.',
    ],
    [
      'magneticVariationDeg',
      -23.6,
      -23.5,
      -23,
      'The magnetic variation is 23.6 west by the official record and 23 west by the open dataset.',
    ],
    [
      'runway.designator',
      '07',
      ' 7',
      '08',
      'The designator is 07 by the official record and 08 by the open dataset.',
    ],
    [
      'ident',
      'IZPE',
      'izpe',
      'IZPQ',
      'The ident is IZPE by the official record and IZPQ by the open dataset.',
    ],
  ])('is %s beyond what it is published in', (path, one, near, far, sentence) => {
    expect(sentences(values({ [path]: one }), values({ [path]: near }))).toEqual([]);
    expect(sentences(values({ [path]: one }), values({ [path]: far }))).toEqual([sentence]);
  });

  it('is nothing that one of them does not say, and no name', () => {
    const one = values({ name: 'One', 'runway.widthFt': 150, 'runway.threshold.latDeg': 40 });
    expect(
      differencesOf(
        one,
        values({ name: 'Two', 'runway.lengthFt': 6500, ...place('runway.threshold', HERE) }),
      ),
    ).toEqual([]);
  });

  it('is nothing between a landing and the table where both are of one runway', async () => {
    const { runways } = await tableOf(runwayTableText(SAMPLE_RUNWAYS), 'ZZPE');
    const table = draftFromRunway(runways[0]!, 'low');
    const { track } = await recordedBy(landingOf(9), 'augmented');
    const landing = draftsFromLanding({ name: 'flight', sha256: '' }, track, { onDate: null });
    if (!landing.ok) throw new Error('no landing');
    expect(differencesOf(table, landing.value[0]!)).toEqual([]);
    // Landed on a runway 800 ft beside it, of which nothing else is known.
    const beside = { ...runways[0]!.low, position: feet(136.4, 800, runways[0]!.low.position!) };
    const far = { ...runways[0]!.high, position: feet(136.4, 800, runways[0]!.high.position!) };
    const other = draftFromRunway({ ...runways[0]!, low: beside, high: far }, 'low');
    expect(differencesOf(other, landing.value[0]!)[0]!.sentence).toMatch(
      /lies 8\d\d ft farther to the right/,
    );
  });
});

describe('one draft of two', () => {
  const one = draft(
    'A',
    { 'runway.lengthFt': 6500, 'runway.widthFt': 150, ...place('runway.threshold', HERE) },
    {
      'runway.threshold': 1,
    },
  );
  const other = draft(
    'B',
    { 'runway.lengthFt': 6400, 'glidepath.angleDeg': 3, ...place('runway.threshold', feet(90, 34)) },
    { 'runway.threshold': 26, 'glidepath.angleDeg': 0.1 },
  );

  it('holds the first where nothing was chosen, fills in from the second, and tells what differs', () => {
    const both = merged(one, other, {}, NAMES);
    expect(both.facility).toEqual({
      format: 'halfdot-facility/1',
      runway: { lengthFt: 6500, widthFt: 150, threshold: HERE },
      glidepath: { angleDeg: 3 },
    });
    expect(both.origins).toMatchObject({ 'runway.lengthFt': 'A', 'glidepath.angleDeg': 'B' });
    expect(both.mayBeOff).toEqual({ 'runway.threshold': 1, 'glidepath.angleDeg': 0.1 });
    expect(both.issues.map(({ code, message }) => [code, message])).toEqual([
      [
        'sources-differ',
        'The length of the runway is 6,500 ft by the official record and 6,400 ft by the open dataset. The official record holds.',
      ],
      [
        'sources-differ',
        'The threshold lies 34 ft farther west by the official record than by the open dataset. The official record holds.',
      ],
    ]);
  });

  it('takes what was chosen with its origin, and says nothing more of it', () => {
    const both = merged(one, other, { 'runway.threshold': 'other', 'runway.widthFt': 'other' });
    expect(both.facility.runway).toMatchObject({ lengthFt: 6500, widthFt: 150 });
    expect(both.origins['runway.threshold.latDeg']).toBe('B');
    expect(both.origins['runway.threshold.lonDeg']).toBe('B');
    expect(both.mayBeOff!['runway.threshold']).toBe(26);
    expect(both.issues.map(({ message }) => message)).toEqual([
      expect.stringContaining('length of the runway'),
    ]);
  });

  it('keeps what both had to say, once', () => {
    const issue = {
      code: 'x',
      severity: 'note',
      message: 'X.',
      count: 1,
      firstLine: null,
      tip: null,
    } as const;
    const both = merged(
      { ...one, issues: [issue] },
      { ...one, issues: [issue, { ...issue, message: 'Y.' }] },
      {},
    );
    expect(both.issues.map(({ message }) => message)).toEqual(['X.', 'Y.']);
  });

  it('never puts a latitude and a longitude of two sources together, whatever is chosen', () => {
    const paths = [
      'ident',
      'runway.lengthFt',
      'runway.threshold.latDeg',
      'runway.threshold.lonDeg',
      'glidepath.antenna.latDeg',
      'glidepath.antenna.lonDeg',
      'runway.threshold.elevationFt',
    ];
    const source = (name: string) =>
      fc
        .subarray(paths)
        .map((some) => draft(name, Object.fromEntries(some.map((path, k) => [path, k + name.length]))));
    const choices = fc.dictionary(
      fc.constantFrom('ident', 'runway.lengthFt', 'runway.threshold', 'glidepath.antenna'),
      fc.constantFrom('one', 'other'),
    );
    fc.assert(
      fc.property(source('A'), source('BB'), choices, (a, b, chosen) => {
        const both = merged(a, b, chosen as Record<string, 'one' | 'other'>);
        for (const at of ['runway.threshold', 'glidepath.antenna'])
          expect(both.origins[`${at}.latDeg`]).toBe(both.origins[`${at}.lonDeg`]);
        for (const { path, value, origin } of leavesOf(both))
          expect(leavesOf(origin === 'A' ? a : b)).toContainEqual({ path, value, origin });
        for (const { path } of [...leavesOf(a), ...leavesOf(b)])
          if (!path.endsWith('latDeg') && !path.endsWith('lonDeg'))
            expect(both.origins).toHaveProperty([path]);
      }),
      { numRuns: 1000 },
    );
  });

  it('is itself with itself', () => {
    expect(merged(one, one, {})).toEqual(one);
    expect(differencesOf(other, other)).toEqual([]);
  });
});
