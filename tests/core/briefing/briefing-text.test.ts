import { describe, expect, it } from 'vitest';
import { briefingText } from '../../../core/briefing/briefing-text.ts';
import { FULL, LEAST, withValue } from '../facility/full-facility.ts';
import { briefed } from './asked.ts';

const EVERYTHING = {
  groundspeedKt: 90,
  airspeedKt: 90,
  wind: { fromTrueDeg: 116, speedKt: 20 },
  temperatureC: -20,
  decisionAltitudeFt: 312,
  objective: 'Both needles within half scale from the fix to decision altitude.',
  goals: ['Hold the glidepath to 200 ft', 'Brief the missed approach before the fix'],
  enteredBy: 'Hazel Wren',
  enteredOn: '2026-03-01',
};
const text = briefingText(briefed(FULL, EVERYTHING));
/** Without its line ends. */
const flat = (of = text) => of.replaceAll(/\s+/g, ' ');
const line = (start: string, of = text) => of.split('\n').find((one) => one.trim().startsWith(start)) ?? '';

describe('the sheet as text', () => {
  it('is at most 100 columns wide, whatever was entered', () => {
    const long = withValue(
      withValue(FULL, 'name', 'Quillmere '.repeat(10)),
      'missedApproach.instructions',
      'Climb straight ahead to the end of the lake '.repeat(20),
    );
    for (const of of [text, briefingText(briefed(long, EVERYTHING)), briefingText(briefed(LEAST))])
      for (const one of of.split('\n')) expect(one.length, one).toBeLessThanOrEqual(100);
  });

  it('is marked as what it is, with who entered the data and of when', () => {
    expect(flat()).toContain(
      'Training aid. Data entered by Hazel Wren, of 1 March 2026. Not for navigation. Use the current chart.',
    );
    expect(briefingText(briefed(LEAST))).toContain('Data entered by ________, of ________.');
  });

  it('says what is briefed, in order', () => {
    expect(line('Quillmere')).toBe('Quillmere ILS 08, IQLM, 110.35 MHz');
    expect(line('Course')).toMatch(/082° magnetic\s+071\.0° true; magnetic as entered/);
    expect(flat()).toMatch(
      /Decision altitude 312 ft 200 ft above the touchdown zone; on the path at 0\.4\d NM Gates/,
    );
    expect(line('Gates')).toMatch(
      /1,112 ft and 612 ft\s+1,000 and 500 ft above the touchdown zone \(112 ft\)/,
    );
    const starts = [
      'Course',
      'Final approach fix',
      'Decision',
      'Gates',
      'The path',
      'Sink rate',
      'Wind',
      'What the',
    ];
    const places = starts.map((start) => text.indexOf(`\n${start}`));
    expect(places.every((place) => place > 0)).toBe(true);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
  });

  it('has the altimeter under the path, with the caution, only with a temperature', () => {
    expect(
      line('Altimeter at −20 °C')
        .trim()
        .split(/\s{2,}/),
    ).toHaveLength(11);
    expect(text).toContain(
      'Shown to explain altimeter readings; apply corrections only as your rules require.',
    );
    const standard = briefingText(briefed(FULL));
    expect(standard).not.toContain('altimeter shows');
    expect(standard).not.toContain('Shown to explain');
  });

  it('marks the groundspeed that was asked for, with its time', () => {
    expect(line('Groundspeed')).toContain('[90]');
    expect(line('Sink rate, ft')).toContain(' 480 ');
    // By hand: 4.777 NM are 286.6 s at 60 kt and 191.1 s at 90.
    expect(line('Fix to decision')).toMatch(/ 4:47 .* 3:11 /);
  });

  it('tells the wind, the heading and that it is another groundspeed', () => {
    expect(flat()).toContain(
      'Wind from 116° true at 20 kt: 14 kt headwind, 14 kt from the right. At 90 kt indicated (86 kt true): heading 091° magnetic, 9° of drift to the left; groundspeed 70 kt. That is not the groundspeed of 90 kt that was given.',
    );
    const calm = briefingText(
      briefed(FULL, { airspeedKt: 90, groundspeedKt: 90, wind: { fromTrueDeg: 0, speedKt: 0 } }),
    );
    expect(calm).toContain('no drift; groundspeed 91 kt.');
    expect(calm).not.toContain('That is not');
    const storm = briefingText(briefed(FULL, { airspeedKt: 60, wind: { fromTrueDeg: 161, speedKt: 95 } }));
    expect(storm).toContain('At 60 kt no heading holds the course in it.');
    expect(briefingText(briefed(FULL, { wind: { fromTrueDeg: 300, speedKt: 12 } }))).toContain(
      'Wind from 300° true at 12 kt: 8 kt tailwind, 9 kt from the left.',
    );
  });

  it('numbers the missed approach, and lists objective and goals', () => {
    expect(text).toContain(
      'Missed approach: climb to 2,500 ft\n  1. Climb straight ahead to 2,500 ft\n  2. Hold at QUORN\n',
    );
    expect(text).toContain('Objective: Both needles within half scale');
    expect(text).toContain('Goals from last time\n  - Hold the glidepath to 200 ft\n');
  });

  it('leaves room for a pencil where nothing was typed, and says what was not entered', () => {
    const bare = briefingText(briefed(LEAST));
    expect(line('Decision', bare)).toMatch(
      /________ ft\s+height ________ ft; fill in from the current chart/,
    );
    expect(line('Fix to decision', bare)).toContain('__:__');
    expect(line('Final approach fix', bare)).toContain('assumed: no distance was entered');
    expect(bare).toContain('Missed approach: not entered, see the current chart');
    expect(bare).not.toContain('Objective');
    const unknown = withValue(withValue(LEAST, 'magneticVariationDeg', undefined), 'localizer', undefined);
    expect(flat(briefingText(briefed(unknown)))).toContain('by the magnetic model today');
  });

  it('ends with what contradicts itself', () => {
    expect(text).not.toContain('To be checked');
    const off = briefingText(briefed(withValue(FULL, 'finalApproachFix.altitudeFt', 2200), EVERYTHING));
    expect(off).toContain('To be checked\n  - warning: At the fix, 5.2 NM from the threshold');
    expect(flat(off)).toMatch(/published 2,200 ft, the path is 360 ft lower;/);
    expect(flat()).toMatch(/published 1,800 ft, the path is 40 ft higher;/);
    const alike = withValue(FULL, 'finalApproachFix.altitudeFt', 1838);
    expect(flat(briefingText(briefed(alike)))).toContain('published 1,838 ft, alike');
  });

  it('names the dot of a display with two, and of one with five', () => {
    expect(line('Localizer ½, one dot')).not.toBe('');
    const five = briefingText(briefed(FULL, { dots: 5 }));
    expect(line('Localizer ⅕, one dot', five)).not.toBe('');
    expect(line('Localizer ½', five)).not.toContain('one dot');
    expect(line('To the threshold')).toMatch(/5 NM\s+3 NM\s+1 NM\s+at decision$/);
  });
});
