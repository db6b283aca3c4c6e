import { describe, expect, it } from 'vitest';
import { standardFacts } from '../../../core/report/standard-facts.ts';
import { SHIPPED, standardById } from '../../../core/standard/standards.ts';
import type { Standard } from '../../../core/standard/standard.ts';
import { FULL, LEAST, standardOf } from '../standard/full-standard.ts';

const factsOf = (standard: Standard) => standardFacts(standard).flatMap(({ facts }) => facts);
const wordsOf = (standard: Standard) =>
  Object.fromEntries(
    standardFacts(standard).map(({ title, facts }) => [
      title,
      facts.map((fact) => `${fact.title}: ${fact.words}`),
    ]),
  );

describe('the limits of a standard in words', () => {
  it('are those of the instrument rating', () => {
    expect(wordsOf(standardById('instrument-rating')!)).toMatchObject({
      'Before final': [
        'Localizer before final: ¾ scale to either side',
        'Altitude before final: ±100 ft of the altitude assigned, else the fix’s',
        'Airspeed before final: ±10 kt of the target',
      ],
      'On final, from the final approach fix': [
        'Localizer on final: ¾ scale to either side',
        'Glidepath on final: ¾ scale to either side',
        'Airspeed on final: ±10 kt of the target',
      ],
      'At minimums': ['Missed approach: begun within 3 s of decision altitude'],
    });
  });

  it('name what they count from, both sides where they differ, and a side that is free', () => {
    expect(wordsOf(standardOf(FULL))).toMatchObject({
      'On final, from the gate that counts': [
        'Localizer on final: 0.6 scale to either side',
        'Glidepath on final: 0.4 scale low, 0.7 scale high',
        'Airspeed on final: −0/+15 kt of Vref',
        'The same with one engine out: −0/+25 kt of Vref',
      ],
      'Stable at 1,000 and 500 ft above the threshold': expect.arrayContaining([
        'Glidepath: 0.35 scale low, no limit high',
        'Airspeed: ±7 kt of the target',
        'Bank: at most 12° to either side',
      ]) as unknown,
      'At minimums': ['Missed approach: begun within −10/+40 ft of decision altitude'],
      'Also on final, for no points': ['Bank on final: from −8 to 9 deg', 'Groundspeed: at most 130 kt'],
    });
    const oneSided = {
      ...LEAST,
      final: { airspeedKt: { upper: 10 }, localizerFullScale: { lower: 0, upper: 1 } },
    };
    expect(wordsOf(standardOf(oneSided))['On final, from the final approach fix']).toEqual([
      'Localizer on final: never left, full scale right',
      'Glidepath on final: no limit: the standard gives no limit for it',
      'Airspeed on final: at most +10 kt of the target',
    ]);
  });

  it('say where each was read, and of an own standard which are its own', () => {
    for (const standard of SHIPPED)
      for (const { isLimit, from, words } of factsOf(standard)) {
        if (isLimit) expect(from).toMatch(/\((?:published|second-hand|from memory|Halfdot’s own choice)\)$/);
        else expect([from, words]).toEqual([null, expect.stringMatching(/^no limit: ./)]);
      }
    const froms = Object.fromEntries(factsOf(standardOf(FULL)).map(({ title, from }) => [title, from]));
    expect(froms).toMatchObject({
      'Localizer on final': null,
      'Bank on final': 'Chief instructor',
      Groundspeed: null,
    });
    const tighter = standardOf({
      ...LEAST,
      basedOn: 'instrument-rating',
      final: { localizerFullScale: 0.1 },
    });
    const inherited = Object.fromEntries(factsOf(tighter).map(({ title, from }) => [title, from]));
    expect(inherited).toMatchObject({
      'Localizer on final': null,
      'Glidepath on final': 'IR.VI.B.S12 (published)',
      'Missed approach': 'IR.VI.B.S13 (Halfdot’s own choice)',
    });
  });
});
