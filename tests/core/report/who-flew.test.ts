import { describe, expect, it } from 'vitest';
import type { Debrief } from '../../../core/debrief/debrief.ts';
import { debriefText } from '../../../core/report/debrief-text.ts';
import { measureSentences } from '../../../core/report/measure-lines.ts';
import { whoFlew } from '../../../core/report/who-flew.ts';
import { secondsOf } from '../../../core/units/utc.ts';
import { fly } from '../../support/flight/fly.ts';
import { PETRELHOLM } from '../../support/samples/petrelholm.ts';
import { straightInLanding } from '../../support/scenarios/approaches.ts';
import { debriefOf, debriefTruth } from '../debrief/drawn.ts';

const at = (clock: string) => `2026-03-14T09:${clock}Z`;
const SPANS = [{ startUtc: at('10:00'), endUtc: at('10:30') }];

describe('who flew it', () => {
  it.each([
    ['09:00', '09:59', ''],
    ['09:00', '10:00', ''],
    ['09:00', '10:10', ' (the instructor flew part of it)'],
    ['10:00', '10:30', ' (the instructor flew)'],
    ['10:10', '10:10.5', ' (the instructor flew)'],
    ['10:29.9', '10:31', ' (the instructor flew part of it)'],
    ['09:00', '11:00', ' (the instructor flew part of it)'],
    ['10:30', '11:00', ''],
  ])('from %s to %s is told%s', (from, to, words) => expect(whoFlew(SPANS, at(from), at(to))).toBe(words));

  it('at a moment is the instructor from taking over to giving back', () => {
    const told = ['09:59.9', '10:00', '10:30', '10:30.1'].map((clock) => whoFlew(SPANS, at(clock)) !== '');
    expect(told).toEqual([false, true, true, false]);
  });
});

describe('what was measured', () => {
  const landing = fly(straightInLanding(PETRELHOLM));
  const alone = debriefTruth(landing);
  const momentS = (kind: string) =>
    secondsOf(alone.approaches[0]!.events.find((event) => event.kind === kind)!.utc);
  const sentences = ({ approaches, log }: Debrief) => measureSentences(approaches[0]!, log);
  const flown = (startS: number, endS: number) =>
    sentences(debriefTruth(landing, {}, { instructorFlew: [{ startS, endS }] }));

  it('of threshold and touchdown is the instructor’s where the instructor landed it', () => {
    const both = (said: readonly string[]) =>
      said.filter(
        (sentence) => /^(Crossed|Touched)/.test(sentence) && sentence.endsWith(' (the instructor flew).'),
      );
    expect(both(sentences(alone))).toEqual([]);
    expect(both(flown(momentS('threshold') - 10, momentS('touchdown') + 10))).toHaveLength(2);
    expect(both(flown(momentS('threshold') + 1, momentS('touchdown') + 10))).toEqual([
      expect.stringMatching(/^Touched down/),
    ]);
  });

  it('ends the first sentence with whose landing it was', () => {
    const downS = momentS('touchdown');
    const ending = (fromS: number, toS: number) =>
      debriefTruth(landing, {}, { instructorFlew: [{ startS: downS + fromS, endS: downS + toS }] })
        .approaches[0]!.summary.split('; ')
        .at(-1);
    expect(ending(-5, 5)).toBe('landed (the instructor flew).');
    expect(ending(-9, -5)).toBe('landed.');
  });

  it('of final says that the instructor flew a part of it', () => {
    const said = flown(momentS('gate-500') - 5, momentS('gate-500') + 5);
    expect(said.find((sentence) => sentence.startsWith('Sink rate on final'))).toMatch(
      / \(the instructor flew part of it\)\.$/,
    );
  });
});

describe('time beyond a limit in the text', () => {
  const high = {
    glidepathFullScale: ({ timeS }: { timeS: number }) => (timeS > 150 && timeS < 190 ? 0.9 : 0),
  };
  const beyond = (fromS: number, toS: number) => {
    const beganS = secondsOf(debriefOf().log.startUtc);
    const instructorFlew = [{ startS: beganS + fromS, endS: beganS + toS }];
    return /beyond the limit, high 0\.90 at most.*/.exec(
      debriefText(debriefOf(high, {}, { instructorFlew })),
    )![0];
  };

  it('is the instructor’s where the instructor flew, and not called early', () => {
    expect(beyond(140, 200)).toBe('beyond the limit, high 0.90 at most (the instructor flew)');
    expect(beyond(160, 170)).toBe('beyond the limit, high 0.90 at most (the instructor flew part of it)');
    expect(beyond(200, 210)).toBe('beyond the limit, high 0.90 at most');
  });
});
