import { describe, expect, it } from 'vitest';
import { statedLines, statedSentence } from '../../../core/report/stated-lines.ts';
import { debriefOf } from '../debrief/drawn.ts';

const told = (stated: Parameters<typeof debriefOf>[2]) => debriefOf({}, {}, stated).approaches[0]!;

describe('what was stated', () => {
  it('is nothing where nothing was', () => {
    expect(statedSentence(told({}))).toBeNull();
    expect(statedLines(told({}))).toEqual([]);
  });

  it('tells who flew when, and every allowance, also on what was not assessed', () => {
    const [event] = told({}).events;
    const startS = Date.parse(event!.utc) / 1000;
    const sentence = statedSentence(
      told({
        hood: true,
        instructorFlew: [{ startS, endS: startS + 30 }],
        allowances: [
          { criterion: 'localizer-final', by: 0.25, reason: 'a gusty crosswind' },
          { criterion: 'airspeed-final', by: 5, reason: 'gusts' },
          { criterion: 'nothing-known', by: 7, reason: 'no reason' },
        ],
      }),
    );
    const clock = (s: number) => new Date(s * 1000).toISOString().slice(11, 19);
    expect(sentence).toBe(
      `Stated: under the hood, instructor's controls ${clock(startS)} to ${clock(startS + 30)}, ` +
        '0.25 of full scale more allowed on "Localizer on final" for a gusty crosswind, ' +
        '5 kt more allowed on "Airspeed on final" for gusts, 7 more allowed on "nothing-known" for no reason.',
    );
  });
});
