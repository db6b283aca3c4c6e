import { describe, expect, it } from 'vitest';
import { issue } from '../../../core/issue/issue.ts';
import { facilityText } from '../../../core/report/facility-text.ts';
import { facilityOf, FULL, geometryOf, issuesOf, LEAST, withValue } from '../facility/full-facility.ts';

const pageOf = (values: object, issues = issuesOf(values)): string =>
  facilityText(facilityOf(values), geometryOf(values), issues);

/** The one line that begins with a label, its runs of spaces made one. */
function lineOf(page: string, label: string): string {
  const lines = page.split('\n').filter((line) => line.trimStart().startsWith(label));
  expect(lines).toHaveLength(1);
  return lines[0]!.trim().replaceAll(/ +/g, ' ');
}

describe('the page of a facility says what is given and what follows from it', () => {
  const page = pageOf(FULL);

  it('begins with the facility and the caution, ends with a line end', () => {
    expect(page.split('\n').slice(0, 4)).toEqual([
      'Quillmere ILS 08, IQLM, 110.35 MHz',
      '==================================',
      '',
      'Training debrief only, never for navigation. Use the current chart.',
    ]);
    expect(page.endsWith('\n')).toBe(true);
    expect(page.endsWith('\n\n')).toBe(false);
  });

  it.each([
    ['Runway', 'Runway 08'],
    ['Bearing', 'Bearing 071.00° true from the two ends'],
    ['Length', 'Length 8,000 ft from the two ends'],
    ['Width', 'Width 148 ft given'],
    ['Threshold elevation', 'Threshold elevation 100 ft given'],
    ['Touchdown zone', 'Touchdown zone 112 ft given'],
    ['Course, true', 'Course, true 071.03° given'],
    ['Course, magnetic', 'Course, magnetic 082° given'],
    ['Threshold to antenna', 'Threshold to antenna 9,000 ft given'],
    ['Angle', 'Angle 3.00°, 318 ft/NM given'],
    ['Threshold crossing', 'Threshold crossing 55 ft given'],
    ['Threshold to origin', 'Threshold to origin 1,059 ft the antenna given'],
    ['Climb to', 'Climb to 2,500 ft given'],
    ['Climb straight', 'Climb straight ahead to 2,500 ft. Hold at QUORN.'],
    ['Final approach fix', 'Final approach fix 5.2 NM, QUENT path at 1,840 ft, 1,800 ft given'],
    ['Decision altitude', 'Decision altitude 312 ft height 200 ft; the path is there at 0.49 NM'],
    ['Nothing', 'Nothing in this facility contradicts anything else in it.'],
  ])('%s', (label, expected) => {
    expect(lineOf(page, label)).toBe(expected);
  });

  it('gives full scale of both needles in degrees', () => {
    const scales = page.split('\n').filter((line) => line.includes('Full scale, one side'));
    expect(scales.map((line) => line.trim().replaceAll(/ +/g, ' '))).toEqual([
      'Full scale, one side 2.23° half the course width given',
      'Full scale, one side 0.70° given',
    ]);
  });
});

describe('what the file leaves out is marked as derived or assumed', () => {
  const page = pageOf(LEAST, []);

  it.each([
    ['Bearing', 'Bearing 071.00° true given'],
    ['Width', 'Width 150 ft assumed'],
    ['Touchdown zone', "Touchdown zone 100 ft assumed: the threshold's"],
    ['Course, true', "Course, true 071.03° the runway's"],
    ['Course, magnetic', 'Course, magnetic not given nor is a variation'],
    [
      'Threshold to antenna',
      'Threshold to antenna 9,000 ft assumed on the centreline, 1,000 ft past the end',
    ],
    ['Threshold to origin', 'Threshold to origin 1,049 ft from angle and crossing height'],
    ['Final approach fix', 'Final approach fix 4.5 NM assumed: path at 1,600 ft'],
    ['Decision altitude', 'Decision altitude not given'],
  ])('%s', (label, expected) => {
    expect(lineOf(page, label)).toBe(expected);
  });

  it('a page without radio, missed approach or fix has no empty places for them', () => {
    expect(page.split('\n')[0]).toBe('Quillmere');
    expect(page).not.toContain('Missed approach');
    expect(page).not.toMatch(/undefined|null|NaN/);
  });

  it('the magnetic course follows from a variation', () => {
    const west = pageOf(withValue(LEAST, 'magneticVariationDeg', -11), []);
    expect(lineOf(west, 'Course, magnetic')).toBe('Course, magnetic 082.0° from variation 11 west');
    const none = pageOf(withValue(LEAST, 'magneticVariationDeg', -0.01), []);
    expect(lineOf(none, 'Course, magnetic')).toBe('Course, magnetic 071.0° from variation 0');
    const finer = pageOf(withValue(LEAST, 'localizer.courseMagneticDeg', 81.6), []);
    expect(lineOf(finer, 'Course, magnetic')).toBe('Course, magnetic 081.6° given');
  });

  it('a fix without name and altitude, and a missed approach in words only', () => {
    const fix = pageOf(withValue(LEAST, 'finalApproachFix.distanceNm', 5), []);
    expect(lineOf(fix, 'Final approach fix')).toBe(
      'Final approach fix 5.0 NM path at 1,770 ft, no altitude given',
    );
    const missed = pageOf(withValue(LEAST, 'missedApproach.instructions', 'Climb.'), []);
    expect(missed).toContain('\n\nMissed approach\n  Climb.\n\n');
  });

  it('a touchdown zone from the two ends says so, and so does a setback given', () => {
    const zone = pageOf(withValue(FULL, 'runway.touchdownZoneElevationFt', undefined), []);
    expect(lineOf(zone, 'Touchdown zone')).toBe(
      'Touchdown zone 111 ft highest of the first 3,000 ft between the ends',
    );
    const setback = pageOf(withValue(LEAST, 'localizer.antennaSetbackFt', 600), []);
    expect(lineOf(setback, 'Threshold to antenna')).toBe(
      'Threshold to antenna 8,600 ft on the centreline, 600 ft past the end',
    );
  });
});

describe('the tables say what it means in flight', () => {
  const page = pageOf(LEAST, []);

  /** Baseline 9,000 ft, full scale 350 ft at the threshold: 350 × (9,000 + d) / 9,000. */
  it('one dot and full scale in feet, to 10 above 1,000', () => {
    expect(lineOf(page, 'Localizer, one dot')).toBe('Localizer, one dot 175 293 529 765');
    expect(lineOf(page, 'Localizer, full scale')).toBe('Localizer, full scale 350 586 1,060 1,530');
    expect(lineOf(page, 'Glidepath, one dot')).toBe('Glidepath, one dot 7 45 122 198');
    expect(lineOf(page, 'Glidepath, full scale')).toBe('Glidepath, full scale 13 90 243 396');
  });

  /** 155 ft at the threshold, 318.4 ft a mile, and d²/2R with d counted from the path's origin. */
  it('the altitude of the path from 1 to 10 NM', () => {
    expect(lineOf(page, 'NM to the threshold')).toBe('NM to the threshold 1 2 3 4 5 6 7 8 9 10');
    expect(lineOf(page, 'Altitude of the path')).toBe(
      'Altitude of the path 475 796 1,120 1,440 1,770 2,100 2,430 2,760 3,100 3,430',
    );
  });

  it('sink rates for 70 to 150 kt, to 5 ft/min', () => {
    expect(lineOf(page, 'Groundspeed')).toBe('Groundspeed, kt 70 80 90 100 110 120 130 140 150');
    expect(page).toMatch(/Sink rate +370 +425 +480 +530 +585 +635 +690 +745 +795\n/);
  });
});

describe('what is to be checked stands at the end', () => {
  it('each with its weight, its sentence and its tip', () => {
    const page = pageOf(LEAST, [
      issue('warning', 'some-code', 'One thing contradicts another.', { tip: 'Look at this field.' }),
      issue('note', 'other-code', 'A thing worth knowing.'),
    ]);
    expect(page.split('To be checked\n')[1]).toBe(
      '  warning: One thing contradicts another.\n    Look at this field.\n  note: A thing worth knowing.\n',
    );
    expect(page).not.toContain('Nothing in this facility');
  });
});

describe('no line is longer than 100 columns', () => {
  it('whatever stands in names, instructions and warnings', () => {
    const wordy = withValue(
      withValue(FULL, 'missedApproach.instructions', `${'x'.repeat(350)} ${'climb '.repeat(200)}`),
      'name',
      'Quillmere on the Quill '.repeat(4).trim(),
    );
    const odd = withValue(
      withValue(wordy, 'finalApproachFix.name', 'Q'.repeat(20)),
      'runway.designator',
      '26L',
    );
    const page = pageOf(withValue(odd, 'finalApproachFix.distanceNm', 9));
    expect(page).toContain('warning: ');
    const longest = Math.max(...page.split('\n').map((line) => line.length));
    expect(longest).toBeLessThanOrEqual(100);
    expect(page).toContain('x'.repeat(96));
  });

  it('in the pages of ordinary facilities', () => {
    for (const values of [FULL, LEAST])
      for (const line of pageOf(values).split('\n')) expect(line.length).toBeLessThanOrEqual(100);
  });
});
