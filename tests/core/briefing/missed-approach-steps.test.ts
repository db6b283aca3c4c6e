import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { missedApproachSteps } from '../../../core/briefing/missed-approach-steps.ts';

describe('the steps of a missed approach', () => {
  it.each([
    ['', []],
    ['Hold.', ['Hold']],
    [
      'Climb straight ahead to 1,000 ft, then a climbing left turn to 2,000 ft to WIMBO and hold.',
      ['Climb straight ahead to 1,000 ft', 'A climbing left turn to 2,000 ft to WIMBO and hold'],
    ],
    ['Climb to 2.5 NM. Turn right.\nHold at QUORN.', ['Climb to 2.5 NM', 'Turn right', 'Hold at QUORN']],
    ['Climb to 800 ft; turn left and then direct TERNA', ['Climb to 800 ft', 'Turn left', 'Direct TERNA']],
    ['Climb to 800 ft. Then turn left.', ['Climb to 800 ft', 'Turn left']],
    ['Climb to 3,000 ft approx. 2 NM out.', ['Climb to 3,000 ft approx. 2 NM out']],
    ['Turn over the N.D.B. Then hold by THENARD.', ['Turn over the N.D.B', 'Hold by THENARD']],
  ])('of "%s"', (text, steps) => expect(missedApproachSteps(text)).toEqual(steps));

  it('hold every word that was entered, in its order, but for "and" and "then"', () => {
    const word = fc.constantFrom(
      'climb',
      'Left',
      'then',
      'and',
      'to',
      '2,000',
      'ft.',
      'ft,',
      'hold;',
      '\n',
      'R-090',
    );
    const bare = (text: string) =>
      text
        .toLowerCase()
        .split(/\s+/)
        .map((one) => one.replace(/[.,;]+$/, ''))
        .filter((one) => !['', 'and', 'then'].includes(one));
    fc.assert(
      fc.property(fc.array(word), (words) => {
        const steps = missedApproachSteps(words.join(' '));
        expect(bare(steps.join(' '))).toEqual(bare(words.join(' ')));
      }),
    );
  });
});
