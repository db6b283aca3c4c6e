import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { facilityProblems } from '../../core/facility/parse-facility.ts';
import { draftOf, NEW_FACILITY, without, withTyped } from '../../renderer/state/facility-draft.ts';
import { FACILITY_FIELDS } from '../../renderer/state/facility-fields.ts';
import { inWords, labelOf, nameOfPlace, remarksOf } from '../../renderer/state/facility-remarks.ts';
import { readingOf } from '../../renderer/worker/facility-reading.ts';

const SAMPLE = readFileSync('samples/petrelholm-ils-07.json', 'utf8');
const OFFSET = readFileSync('samples/choughfell-ils-32.json', 'utf8');
const named = (path: string) => FACILITY_FIELDS.find((field) => field.path.join('.') === path)!;
const typedInto = (text: string, ...typed: readonly (readonly [string, string])[]) =>
  typed.reduce((so, [path, words]) => withTyped(so, named(path), words), text);

/** "Where: kind: what" of each remark. */
function said(text: string): string[] {
  const draft = draftOf(text);
  if (!draft.ok) throw new Error(draft.why);
  return remarksOf(draft.root, facilityProblems(text)).map(
    (remark) => `${nameOfPlace(remark)}: ${remark.kind}: ${remark.sentence}`,
  );
}

const DIRECTION =
  'Far end, or bearing and length: lacking: Needed: latitude and longitude of the far end, or the true bearing and the length.';

describe('what is said beside the fields of a facility', () => {
  it('is nothing where it can be used', () => expect(said(SAMPLE)).toEqual([]));

  it('is of a new one all that it needs, in the order of the form, and none of it a mistake', () => {
    expect(said(NEW_FACILITY)).toEqual([
      'Name: lacking: Needed.',
      'Runway designator: lacking: Needed.',
      'Threshold latitude: lacking: Needed.',
      'Threshold longitude: lacking: Needed.',
      'Threshold elevation: lacking: Needed.',
      DIRECTION,
      'Glidepath angle: lacking: Needed.',
      'Threshold crossing height: lacking: Needed.',
    ]);
  });

  it('asks for the direction of the runway once, by either way', () => {
    const without_ = without(SAMPLE, ['runway', 'farEnd']);
    expect(said(without_)).toEqual([DIRECTION]);
    expect(said(typedInto(without_, ['runway.trueBearingDeg', '46']))).toEqual([DIRECTION]);
    expect(said(typedInto(without_, ['runway.trueBearingDeg', '46'], ['runway.lengthFt', '6500']))).toEqual(
      [],
    );
  });

  it('asks for the rest of a place that was begun', () => {
    expect(said(typedInto(SAMPLE, ['localizer.antenna.latDeg', 'S31 11']))).toEqual([
      'Localizer antenna longitude: lacking: Needed.',
    ]);
  });

  it('tells of what is no position, no number or out of range at its own field', () => {
    const text = typedInto(
      SAMPLE,
      ['runway.threshold.latDeg', 'S31 75.1'],
      ['runway.threshold.lonDeg', 'W016 75.1'],
      ['runway.threshold.elevationFt', '34000'],
      ['runway.designator', '47'],
      ['finalApproachFix.distanceNm', '5,2'],
      ['magneticVariationDeg', 'some'],
    );
    expect(said(text)).toEqual([
      'Runway designator: wrong: Runway designator is "47": a runway designator is 01 to 36, with L, C or R where runways are parallel.',
      'Threshold latitude: wrong: “S31 75.1” is no latitude. Write S31 12.5, S31 12 30.4, 311230.4S or -31.2084.',
      'Threshold longitude: wrong: “W016 75.1” is no longitude. Write W016 24.1, W016 24 06.2, 0162406.2W or -16.4017.',
      'Threshold elevation: wrong: It is 34000: an elevation lies between -1500 and 16000 ft.',
      'Fix to threshold: wrong: “5,2” is no number. Write decimals with a point.',
      'Magnetic variation: wrong: “some” is no variation. Write 3.5 W or 3.5 E.',
    ]);
  });

  it('tells of what values are together, at the field or at the group, in the words of the form', () => {
    expect(said(typedInto(SAMPLE, ['airportElevationFt', '4600']))).toEqual([
      "Airport elevation: wrong: It is 4600: the threshold lies at 34 ft, and one aerodrome's elevations lie within 500 ft. Compare it with “Threshold elevation”: one of them is mistyped.",
    ]);
    const [far] = said(typedInto(SAMPLE, ['runway.farEnd.latDeg', 'S32 12.5']));
    expect(far).toMatch(
      /^Far end, or bearing and length: wrong: It is [\d.]+ NM from the threshold: a runway is/,
    );
    const [antenna] = said(typedInto(OFFSET, ['glidepath.antenna.latDeg', 'S47 40']));
    expect(antenna).toMatch(/^Glidepath antenna: wrong: It stands .* It stands beside the touchdown zone/);
  });

  it('tells of keys that no field stands for last, by their own names', () => {
    const text = SAMPLE.replace('"name"', '"notes": 1, "name"').replace('"widthFt": 150', '"widhtFt": 150');
    expect(said(text)).toEqual([
      'Its file: wrong: In its file, runway.widhtFt is not a key of a facility file. Did you mean runway.widthFt?',
      expect.stringMatching(
        /^Its file: wrong: In its file, notes is not a key of a facility file\. Known here/,
      ),
    ]);
  });
});

describe('the words of the form', () => {
  it('stand in every warning in place of keys, and every field has its unit in its label', () => {
    const text = typedInto(
      SAMPLE,
      ['localizer.courseMagneticDeg', '170'],
      ['localizer.courseWidthDeg', '1.5'],
      ['magneticVariationDeg', '23.6'],
      ['finalApproachFix.distanceNm', '6.2'],
      ['finalApproachFix.altitudeFt', '200'],
      ['frequencyMHz', '110.2'],
      ['runway.lengthFt', '7500'],
      ['runway.trueBearingDeg', '70'],
      ['glidepath.fullScaleDeg', '0.1'],
      ['glidepath.angleDeg', '4'],
      ['minimums.decisionAltitudeFt', '2400'],
    );
    const { issues } = readingOf({ id: 'x', text }, 2026.2);
    const sentences = issues.flatMap(({ message, tip }) => [message, ...(tip ? [tip] : [])]);
    expect(issues.length).toBeGreaterThan(9);
    expect(
      sentences.filter((sentence) => /[a-z](Deg|Ft|Nm|MHz|Fix)\b/.test(sentence)).length,
    ).toBeGreaterThan(9);
    for (const sentence of sentences) {
      expect(inWords(sentence)).not.toMatch(
        /[a-z](Deg|Ft|Nm|MHz|Fix|End)\b|\w\.\w+[A-Z]|runway\.|localizer\./,
      );
      expect(inWords(sentence)).toMatch(/^[A-Z“\d]/);
    }
    expect(inWords('Give magneticVariationDeg, east positive.')).toBe(
      'Give “Magnetic variation”, east positive.',
    );
    expect(labelOf(named('finalApproachFix.distanceNm'))).toBe('Fix to threshold, NM');
    expect(labelOf(named('name'))).toBe('Name');
  });
});

describe('what follows from a facility', () => {
  it('is told in a few lines that agree with its sample', () => {
    const { facts, plan, problems, details } = readingOf({ id: 'x', text: SAMPLE }, 2026.2);
    const lines = Object.fromEntries(facts.map(({ words, value, from }) => [words, [value, from]]));
    expect(lines).toMatchObject({
      'Runway length': ['6,500 ft', 'from the two ends'],
      Variation: ['23.6 west', 'given'],
      'Course, magnetic': ['070.0°', null],
      'Threshold to antenna': ['7,500 ft', '1,000 ft past the far end'],
      'Localizer full scale': ['2.67° either side', '350 ft at the threshold'],
      Glidepath: ['3.00°', '318 ft/NM'],
      'Decision height': ['200 ft', 'above the touchdown zone at 40 ft'],
    });
    expect(plan.length).toBeGreaterThan(5);
    expect([problems, details === null]).toEqual([[], false]);
  });

  it('says what was assumed, and whose variation it is', () => {
    const bare = without(without(without(SAMPLE, ['localizer']), ['magneticVariationDeg']), ['minimums']);
    const { facts } = readingOf({ id: 'x', text: without(bare, ['finalApproachFix']) }, 2026.2);
    const from = Object.fromEntries(facts.map(({ words, from: source }) => [words, source]));
    expect(from).toMatchObject({
      Variation: 'by the magnetic model, today',
      'Threshold to antenna': 'assumed 1,000 ft past the far end',
      'Glidepath at the fix': expect.stringMatching(/NM out, assumed$/),
      'Decision height': 'no decision altitude given',
    });
    const later = readingOf({ id: 'x', text: without(SAMPLE, ['magneticVariationDeg']) }, 2041).facts;
    expect(later.find(({ words }) => words === 'Variation')!.value).toBe('not known');
  });

  it('is nothing where it cannot be used, and then every reason has its key', () => {
    const text = typedInto(SAMPLE, ['glidepath.angleDeg', '33']);
    const reading = readingOf({ id: 'x', text }, 2026.2);
    expect([reading.facts, reading.plan, reading.details]).toEqual([[], [], null]);
    expect(reading.problems).toMatchObject([{ path: ['glidepath', 'angleDeg'] }]);
  });
});
