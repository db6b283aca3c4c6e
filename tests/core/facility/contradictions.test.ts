import { describe, expect, it } from 'vitest';
import { geodesicFrom } from '../../../core/earth/geodesic.ts';
import { glidepathAltitudeFt } from '../../../core/facility/path-altitude.ts';
import { METRES_PER_FOOT } from '../../../core/units/units.ts';
import { FULL, geometryOf, issuesOf, LEAST, withValue, type Json } from './full-facility.ts';

const codes = (values: object, onDate: number | null = 2025.5) =>
  issuesOf(values, onDate).map(({ code }) => code);

function onlyIssue(values: object, onDate: number | null = 2025.5) {
  const issues = issuesOf(values, onDate);
  expect(issues.map(({ code }) => code)).toHaveLength(1);
  return issues[0]!;
}

const changed = (values: object, changes: Json): Json =>
  Object.entries(changes).reduce(
    (facility, [path, value]) => withValue(facility, path, value),
    values as Json,
  );

describe('a facility that is consistent in itself has nothing to be asked about', () => {
  it('with everything given, and with the least', () => {
    expect(issuesOf(FULL)).toEqual([]);
    expect(issuesOf(LEAST)).toEqual([]);
  });
});

/** LEAST lies 071 true; with variation 11 west that is 082 magnetic. */
const named = (designator: string, changes: Json = {}) =>
  changed(LEAST, { magneticVariationDeg: -11, 'runway.designator': designator, ...changes });

const north = (latDeg: number, designator: string) =>
  codes(changed(named(designator), { 'runway.threshold.latDeg': latDeg, magneticVariationDeg: -30 }), null);

describe('the designator is held against the bearing', () => {
  it('10 degrees apart after variation is still right, more is asked about', () => {
    expect(codes(named('09', { 'runway.trueBearingDeg': 69 }))).toEqual([]);
    const issue = onlyIssue(named('09', { 'runway.trueBearingDeg': 68.9 }));
    expect(issue).toMatchObject({ severity: 'warning', code: 'facility-designator-disagrees' });
    expect(issue.message).toBe(
      'The designator 09 stands for 090, but the runway lies 080 magnetic (069 true).',
    );
    expect(issue.tip).toContain('Check runway.designator');
  });

  it('exchanged ends are suspected when the designator points the other way', () => {
    expect(onlyIssue(named('26')).tip).toContain('Are the ends exchanged?');
  });

  it('across north the short way counts', () => {
    expect(codes(named('36', { 'runway.trueBearingDeg': 353, magneticVariationDeg: -11 }))).toEqual([]);
    expect(codes(named('01L', { 'runway.trueBearingDeg': 350, magneticVariationDeg: -11 }))).toEqual([]);
  });

  it('with the variation unknown only 30 degrees are asked about', () => {
    const unknown = (designator: string) =>
      codes(changed(LEAST, { 'runway.designator': designator, 'runway.trueBearingDeg': 70 }), null);
    expect(unknown('10')).toEqual(['facility-variation-unknown']);
    expect(unknown('04')).toEqual(['facility-variation-unknown']);
    expect(unknown('11')).toEqual(['facility-designator-disagrees', 'facility-variation-unknown']);
    const [issue] = issuesOf(changed(LEAST, { 'runway.designator': '11' }), null);
    expect(issue!.message).toContain('but the runway lies 071 true (variation unknown)');
  });

  it('north of 60 degrees a designator may be true', () => {
    expect(north(60.1, '07')).toEqual([]);
    expect(north(60.1, '10')).toEqual([]);
    expect(north(60.1, '13')).toEqual(['facility-designator-disagrees']);
    expect(north(60, '07')).toEqual(['facility-designator-disagrees']);
    expect(north(60, '07T')).toEqual([]);
    expect(north(-70, '07')).toEqual(['facility-designator-disagrees']);
  });
});

describe('length and bearing are held against the two ends', () => {
  it('1 percent apart is still right, more is asked about, with the likely reason', () => {
    expect(codes(changed(FULL, { 'runway.lengthFt': 8079 }))).toEqual([]);
    const longer = onlyIssue(changed(FULL, { 'runway.lengthFt': 8500 }));
    expect(longer.code).toBe('facility-length-disagrees');
    expect(longer.message).toBe(
      'The two ends of the runway lie 8,000 ft apart, but runway.lengthFt is 8,500; the ends are used.',
    );
    expect(longer.tip).toContain('Is the threshold displaced');
    expect(onlyIssue(changed(FULL, { 'runway.lengthFt': 7900 })).tip).toContain('Check runway.lengthFt');
  });

  it('a bearing more than 0.3 degrees from the ends is asked about', () => {
    expect(codes(changed(FULL, { 'runway.trueBearingDeg': 71.29 }))).toEqual([]);
    const issue = onlyIssue(changed(FULL, { 'runway.trueBearingDeg': 82 }));
    expect(issue.code).toBe('facility-bearing-disagrees');
    expect(issue.message).toBe(
      'From end to end the runway lies 071.00 true, but runway.trueBearingDeg is 82; the ends are used.',
    );
    expect(issue.tip).toContain('magnetic?');
  });
});

const magnetic = (courseMagneticDeg: number) =>
  changed(LEAST, { magneticVariationDeg: -11, 'localizer.courseMagneticDeg': courseMagneticDeg });

const antennaAside = (rightFt: number, changes: Json = {}) => {
  const centre = geodesicFrom(LEAST.runway.threshold, 71, 9000 * METRES_PER_FOOT);
  const { latDeg, lonDeg } = geodesicFrom(centre, 161, rightFt * METRES_PER_FOOT);
  return changed(LEAST, { 'localizer.antenna': { latDeg, lonDeg }, ...changes });
};

describe('the localizer is held against the runway', () => {
  it('a magnetic course more than 1 degree off asks whether the localizer is offset', () => {
    expect(codes(magnetic(83))).toEqual([]);
    const issue = onlyIssue(magnetic(84));
    expect(issue.code).toBe('facility-magnetic-course-disagrees');
    expect(issue.message).toBe(
      'localizer.courseMagneticDeg is 84, with variation 11 west that is 073.0 true, but the runway lies 071.0 true: 2 degrees apart.',
    );
    expect(issue.tip).toContain('Is the localizer offset?');
  });

  it('with a true course given the two courses are held against each other', () => {
    const issue = onlyIssue(changed(FULL, { 'localizer.courseMagneticDeg': 80 }));
    expect(issue.message).toContain('but localizer.courseTrueDeg is 071.0 true: 2 degrees apart');
    expect(issue.tip).toContain('Check both courses');
  });

  it('with the variation unknown the magnetic course says nothing', () => {
    expect(codes(changed(LEAST, { 'localizer.courseMagneticDeg': 99 }), null)).toEqual([
      'facility-variation-unknown',
    ]);
  });

  it('an antenna more than 0.3 degrees off the centreline without a course is asked about', () => {
    expect(codes(antennaAside(45))).toEqual([]);
    expect(codes(antennaAside(-45))).toEqual([]);
    const issue = onlyIssue(antennaAside(-100));
    expect(issue.code).toBe('facility-antenna-off-centreline');
    expect(issue.message).toContain('stands 100 ft left of the extended centreline, 0.6 degrees seen from');
    expect(onlyIssue(antennaAside(100)).message).toContain('100 ft right');
  });

  it.each([
    [71.2, []],
    [73.2, ['facility-offset']],
    [68.9, ['facility-offset']],
    [74.2, ['facility-offset-beyond-faa']],
    [67.9, ['facility-offset-beyond-faa']],
    [76.2, ['facility-offset-beyond-icao']],
  ])('a course of %f for a runway of 071 gives %j', (courseTrueDeg, expected) => {
    expect(codes(antennaAside(-100, { 'localizer.courseTrueDeg': courseTrueDeg }))).toEqual(expected);
  });

  it('says by how much it is offset, and what is judged', () => {
    const offset = onlyIssue(antennaAside(-100, { 'localizer.courseTrueDeg': 73.5 }));
    expect(offset.severity).toBe('note');
    expect(offset.message).toMatch(
      /^The localizer course 073\.5 true is 2\.4\d degrees off the runway: the needle/,
    );
    const far = onlyIssue(antennaAside(-100, { 'localizer.courseTrueDeg': 77 }));
    expect(far).toMatchObject({ severity: 'warning', tip: expect.stringContaining('magnetic?') as string });
    expect(far.message).toContain("outside ICAO's rule for an ILS (5) and FAA's (3)");
  });
});

describe('the glidepath antenna is held against the crossing height', () => {
  it('more than 5 ft apart is said, with what is used instead', () => {
    const issue = onlyIssue(changed(FULL, { 'glidepath.antenna.elevationFt': 114 }));
    expect(issue).toMatchObject({ severity: 'warning', code: 'facility-crossing-height-disagrees' });
    expect(issue.message).toBe(
      'From its antenna the glidepath crosses the threshold at 66 ft, but glidepath.thresholdCrossingHeightFt is 55; the antenna is not used.',
    );
    expect(issue.tip).toContain('elevation');
  });
});

describe('the fix is held against the path', () => {
  it('within 100 ft of the path its altitude is right, a little farther it is asked about', () => {
    const pathFt = glidepathAltitudeFt(geometryOf(FULL), 5.2);
    const off = (feet: number) => codes(changed(FULL, { 'finalApproachFix.altitudeFt': pathFt + feet }));
    for (const feet of [-99.9, 0, 99.9]) expect(off(feet)).toEqual([]);
    for (const feet of [-100.1, 100.1]) expect(off(feet)).toEqual(['facility-fix-off-glidepath']);
  });

  it('farther from it the distance is suspected to be a DME reading', () => {
    const issue = onlyIssue(changed(FULL, { 'finalApproachFix.distanceNm': 6.1 }));
    expect(issue.code).toBe('facility-fix-off-glidepath');
    expect(issue.message).toMatch(
      /^At the fix, 6\.1 NM from the threshold, the glidepath is at 2,1\d\d ft, but finalApproachFix\.altitudeFt is 1,800, where the path is 5\.1 NM out\.$/,
    );
    expect(issue.tip).toContain('Is 6.1 a DME reading?');
    expect(codes(changed(FULL, { 'finalApproachFix.distanceNm': 4.7 }))).toEqual([
      'facility-fix-off-glidepath',
    ]);
  });

  it('without an altitude there is nothing to hold', () => {
    expect(codes(changed(FULL, { 'finalApproachFix.altitudeFt': undefined }))).toEqual([]);
  });

  it('without a distance final is assumed, and a DME reading alone is not taken for one', () => {
    const dme = onlyIssue(changed(FULL, { 'finalApproachFix.distanceNm': undefined }));
    expect(dme).toMatchObject({ severity: 'caution', code: 'facility-fix-distance-missing' });
    expect(dme.message).toMatch(/final is taken to begin 4\.\d NM from the threshold/);
    expect(dme.tip).toContain('6.1 is a DME reading');
    const named = onlyIssue(changed(LEAST, { 'finalApproachFix.name': 'QUENT' }));
    expect(named.tip).toBe('Give finalApproachFix.distanceNm, the distance to the threshold.');
  });

  it('a fix not above the decision altitude is asked about', () => {
    const low = changed(FULL, { 'minimums.decisionAltitudeFt': 1000, 'finalApproachFix.altitudeFt': 1000 });
    expect(codes(low)).toEqual(['facility-fix-off-glidepath', 'facility-fix-below-minimum']);
    expect(issuesOf(low)[1]!.message).toBe(
      'finalApproachFix.altitudeFt is 1,000, not above the decision altitude of 1,000.',
    );
  });
});

describe('the variation is held against the magnetic model', () => {
  it('a turned sign is told from another slip', () => {
    const turned = issuesOf(changed(FULL, { magneticVariationDeg: 11 })).find(
      ({ code }) => code === 'facility-variation-disagrees',
    )!;
    expect(turned.message).toMatch(
      /^magneticVariationDeg is 11 east, but the magnetic model gives 1\d(\.\d)? west there\.$/,
    );
    expect(turned.tip).toContain('sign turned round?');
    const wrong = issuesOf(changed(FULL, { magneticVariationDeg: -31 })).find(
      ({ code }) => code === 'facility-variation-disagrees',
    )!;
    expect(wrong.tip).toContain('position of runway.threshold');
  });

  it('an assigned value some degrees old is left alone, and so is any when no model holds', () => {
    expect(codes(changed(LEAST, { magneticVariationDeg: -14 }))).toEqual([]);
    expect(codes(changed(LEAST, { magneticVariationDeg: -18.5 }), 2035)).toEqual([]);
  });

  it('neither given nor computable is said', () => {
    expect(onlyIssue(LEAST, 2031)).toMatchObject({ severity: 'caution', code: 'facility-variation-unknown' });
    expect(onlyIssue(LEAST, null).code).toBe('facility-variation-unknown');
  });
});

describe('values that are more often a slip are asked about', () => {
  it.each([
    ['localizer.courseWidthDeg', [3, 4.5, 6], [2.99, 6.01], 'facility-course-width-unusual'],
    [
      'glidepath.fullScaleDeg',
      [0.46, 0.5, 0.7, 0.72, 1.04],
      [0.44, 1.06, 1.4],
      'facility-full-scale-unusual',
    ],
    ['glidepath.angleDeg', [2.5, 3, 3.5], [2.49, 3.51], 'facility-glidepath-angle-unusual'],
    ['minimums.decisionAltitudeFt', [200, 300, 1600], [199, 1601], 'facility-decision-altitude-unusual'],
    [
      'frequencyMHz',
      [108.1, 108.15, 109.7, 111.95],
      [110.2, 110.25, 110.33, 108],
      'facility-frequency-unusual',
    ],
  ])('%s: %j are usual, %j are not', (path, usual, unusual, code) => {
    for (const value of usual) expect(codes(changed(LEAST, { [path]: value }))).toEqual([]);
    for (const value of unusual) expect(codes(changed(LEAST, { [path]: value }))).toEqual([code]);
  });

  it('one side for both and both for one are suspected', () => {
    expect(onlyIssue(changed(LEAST, { 'localizer.courseWidthDeg': 2.2 })).tip).toContain('one side only?');
    expect(onlyIssue(changed(LEAST, { 'localizer.courseWidthDeg': 8 })).tip).toBeNull();
    expect(onlyIssue(changed(LEAST, { 'glidepath.fullScaleDeg': 1.4 })).tip).toContain('the whole beam');
    expect(onlyIssue(changed(LEAST, { 'glidepath.fullScaleDeg': 0.35 })).tip).toContain('one dot?');
  });

  it('a height written as an altitude is suspected', () => {
    expect(onlyIssue(changed(LEAST, { 'minimums.decisionAltitudeFt': 150 })).message).toBe(
      'minimums.decisionAltitudeFt is 150, 50 ft above the touchdown zone at 100.',
    );
  });
});
