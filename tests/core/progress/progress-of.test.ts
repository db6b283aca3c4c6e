import { describe, expect, it } from 'vitest';
import { progressSentence } from '../../../core/progress/sentences.ts';
import { trendWords } from '../../../core/progress/trend-words.ts';
import { lessonsOf, lineOf, recordOf, type MadeUp } from './made-up.ts';

describe('a record over lessons', () => {
  it('holds the middle RMS and share of each lesson in the order flown, whatever the order given', () => {
    const rms = [0.5, 0.3, 0.9, 0.2, 0.1, 0.3];
    const made = lessonsOf(2, 3, (lesson, i) => ({
      glidepathRms: rms[(lesson - 1) * 3 + i]!,
      outsideNm: lesson + i / 8,
    }));
    const { lessons, lines } = recordOf(made.toReversed());
    expect(lessons.map(({ date, approaches }) => [date, approaches])).toEqual([
      ['2026-05-01', 3],
      ['2026-05-02', 3],
    ]);
    const glidepath = lines.find(({ id }) => id === 'glidepath-final')!;
    // The middle of each lesson: 1.125 and 2.125 of 5 NM beyond the limit.
    expect(glidepath.lessons.map((cell) => [cell.rms, cell.insideShare, cell.value])).toEqual([
      [0.5, 0.775, 0.5],
      [0.2, 0.575, 0.2],
    ]);
  });

  it('shows the last graded approach and the one with the most points at its facility, of several the last', () => {
    const level = (at: number) => [at, at, at] as const;
    const { shown } = recordOf([
      { lesson: 1, level: level(4) },
      { lesson: 2, level: level(4) },
      { lesson: 3, level: level(5), facility: 'Choughfell ILS 32' },
      { lesson: 4, level: level(2) },
      { lesson: 5, level: null },
    ]);
    expect(shown).toMatchObject({
      last: { debriefId: 'debrief of log of lesson 4', number: 1, date: '2026-05-04', level: 2, score: 40 },
      best: { debriefId: 'debrief of log of lesson 2', date: '2026-05-02', score: 80 },
    });
    expect(recordOf([{ level: null }]).shown).toBeNull();
  });

  it('takes none for the best that was held to less than the last, or that may be worse than it looks', () => {
    const best = (...flown: readonly MadeUp[]) => recordOf(flown).shown!.best.date;
    const last = { lesson: 2, level: [3, 3, 3] } as const;
    expect(best({ lesson: 1, level: [5, 5, 5] }, last)).toBe('2026-05-01');
    const less = {
      lesson: 1,
      level: [5, 5, 5],
      verdicts: { 'localizer-before-final': 'not-assessed' },
    } as const;
    expect(best(less, last)).toBe('2026-05-02');
    expect(best({ lesson: 1, level: [5, 2, 5] }, last)).toBe('2026-05-02');
    expect(recordOf([{ level: [5, 2, 5] }]).shown).toMatchObject({ last: { level: 5, isOpen: true } });
  });

  it('sees that a gate that was failed in the first lessons is passed in all later ones', () => {
    const from = (passedFrom: number) =>
      lineOf(
        recordOf(
          lessonsOf(12, 2, (lesson) => ({
            verdicts: { stability: lesson < passedFrom ? ('not-met' as const) : ('met' as const) },
          })),
        ),
        'stability',
      );
    // Most pairs of lessons are alike, and the middle slope is none.
    expect(from(4).trend).toMatchObject({ change: 'perhaps-better', slopePerLesson: 0 });
    expect(trendWords(from(4))).toMatch(/^perhaps better by up to \d+\.\d \D+ a lesson$/);
    expect(from(7).trend.change).toBe('better');
    expect(from(2).trend.change).toBe('not-sure');
  });

  it('takes the RMS of airspeed about its target, and not about its mean', () => {
    const record = recordOf([{ airspeed: { mean: 94, standardDeviation: 3 } }]);
    expect(lineOf(record, 'airspeed-final').lessons[0]!.rms).toBeCloseTo(5, 12);
  });

  it('follows a criterion before final by its share, and none by the RMS of the turn on', () => {
    const line = lineOf(recordOf([{ outsideNm: 1.25 }]), 'localizer-before-final');
    expect(line).toMatchObject({ measure: 'inside-by-distance', better: 'higher' });
    expect(line.lessons[0]).toMatchObject({ insideShare: 0.75, rms: null, value: 0.75 });
  });

  it('says why an assessed approach has no share, and follows that criterion by it all the same', () => {
    const why = 'debriefed by a version that told no distance';
    const old = recordOf(lessonsOf(3, 2, () => ({ hasNoMiles: true })));
    const line = lineOf(old, 'localizer-before-final');
    expect(line).toMatchObject({
      measure: 'inside-by-distance',
      notMeasured: [{ why, approaches: 6 }],
      trend: { change: 'too-few' },
    });
    expect(line.lessons[0]).toMatchObject({ insideShare: null, value: null, approaches: 0 });
    expect(line.verdicts.met).toBe(6);
    // What is followed by something else needs no share.
    expect(lineOf(old, 'glidepath-final').notMeasured).toEqual([]);
    expect(lineOf(old, 'stability').notMeasured).toEqual([]);
    const still = lineOf(recordOf([{ assessedNm: 0 }, { minute: 10 }]), 'altitude-before-final');
    expect(still.notMeasured).toEqual([{ why: 'the recorded position stood still', approaches: 1 }]);
    expect(still.lessons[0]).toMatchObject({ insideShare: 1, approaches: 1 });
  });

  it('has no share below none, where two sums of the same miles differ in their last digits', () => {
    const line = lineOf(recordOf([{ outsideNm: 5 + 1e-15 }]), 'localizer-before-final');
    expect(line.lessons[0]!.insideShare).toBe(0);
  });

  it('tells unclear and not assessed apart, and counts both', () => {
    const id = 'glidepath-final';
    const record = recordOf([
      { minute: 0 },
      { minute: 10, verdicts: { [id]: 'not-met' } },
      { minute: 20, verdicts: { [id]: 'unclear' } },
      { minute: 30, verdicts: { [id]: 'not-assessed' }, glidepathRms: 0.9 },
    ]);
    const counts = { met: 1, 'not-met': 1, unclear: 1, 'not-assessed': 1 };
    const line = lineOf(record, id);
    expect(line.verdicts).toEqual(counts);
    expect(line.lessons[0]!.verdicts).toEqual(counts);
    // What was not assessed tells no figure, and what is unclear does.
    expect(line.lessons[0]).toMatchObject({ approaches: 3, rms: 0.2 });
  });

  it('says why an assessed approach has no RMS', () => {
    const record = recordOf([
      { minute: 0, instructorFlewFinal: true },
      { minute: 10, airspeed: { mean: 90, standardDeviation: 1, estimated: true } },
    ]);
    expect(lineOf(record, 'airspeed-final').notMeasured).toEqual([
      { why: 'the instructor flew a part of final', approaches: 1 },
      { why: 'the airspeed was estimated from the wind', approaches: 1 },
    ]);
    expect(lineOf(record, 'glidepath-final')).toMatchObject({
      notMeasured: [{ approaches: 1 }],
      trend: { approaches: 1 },
    });
  });

  it('makes a share of what was decided at a gate, and tells each gate', () => {
    const record = recordOf([
      { minute: 0 },
      { minute: 10, verdicts: { stability: 'not-met' } },
      { minute: 20, verdicts: { stability: 'unclear' } },
    ]);
    const line = lineOf(record, 'stability');
    expect(line).toMatchObject({ measure: 'share-met', lessons: [{ value: 0.5, approaches: 2 }] });
    expect(
      line.gates.map(({ gate, verdicts }) => [gate, verdicts.met, verdicts['not-met'], verdicts.unclear]),
    ).toEqual([
      ['gate-1000', 1, 1, 1],
      ['gate-500', 3, 0, 0],
    ]);
  });

  it('names both gates where stability stood on one or the other', () => {
    const record = recordOf([{ minute: 0 }, { minute: 10, gate: '500 ft' }]);
    expect(lineOf(record, 'stability').title).toBe('Stable from 1,000 ft or stable from 500 ft');
  });

  it('takes the middle of levels that stand, and counts those between two and those not graded', () => {
    const record = recordOf([
      { minute: 0, level: [4, 4, 4] },
      { minute: 10, level: [2, 2, 2] },
      { minute: 20, level: [5, 2, 5] },
      { minute: 30, level: null },
    ]);
    const line = lineOf(record, 'level');
    expect(line.lessons[0]).toMatchObject({ value: 3, approaches: 2 });
    expect(line.verdicts).toEqual({ met: 1, 'not-met': 1, unclear: 1, 'not-assessed': 1 });
    expect(record.lines.at(-1)).toBe(line);
  });

  it('of nobody’s approaches is empty and says so', () => {
    expect(recordOf([])).toMatchObject({
      compared: null,
      lessons: [],
      lines: [],
      practise: null,
      leftOut: [],
    });
  });
});

describe('a trend', () => {
  const falling = (lesson: number) => ({ glidepathRms: 0.5 - 0.03 * lesson });

  it.each([
    ['five approaches in five lessons', lessonsOf(5, 1, falling)],
    ['eight approaches in two lessons', lessonsOf(2, 4, falling)],
  ])('is not told of %s', (_name, made) => {
    const { trend } = lineOf(recordOf(made), 'glidepath-final');
    expect(trend).toMatchObject({ change: 'too-few', slopePerLesson: null, interval: null });
    expect(trend.why).toMatch(/^Too few to tell: .* 6 in 3 are needed\.$/);
  });

  it('of three lessons has a slope and no interval, and is never called a change', () => {
    const { trend } = lineOf(recordOf(lessonsOf(3, 2, falling)), 'glidepath-final');
    expect(trend).toMatchObject({ change: 'not-sure', interval: null });
    expect(trend.slopePerLesson).toBeCloseTo(-0.03, 12);
    expect(trend.why).toBe('3 lessons are too few to be sure; 5 are needed.');
  });

  it('is better where an RMS falls, and worse where it rises', () => {
    const change = (sign: number) =>
      lineOf(
        recordOf(lessonsOf(8, 1, (lesson) => ({ glidepathRms: 0.5 + sign * 0.03 * lesson }))),
        'glidepath-final',
      ).trend.change;
    expect([change(-1), change(1)]).toEqual(['better', 'worse']);
  });

  it('is better where a share or a level rises', () => {
    const record = recordOf(
      lessonsOf(12, 1, (lesson) => {
        const level = 1 + Math.floor(lesson / 3);
        return { outsideNm: 3 - 0.2 * lesson, level: [level, level, level] };
      }),
    );
    expect(lineOf(record, 'altitude-before-final').trend.change).toBe('better');
    expect(lineOf(record, 'level').trend.change).toBe('better');
  });

  it('is perhaps one where the line by itself shows it, and not among all lines', () => {
    const change = (sign: number) =>
      lineOf(
        recordOf(lessonsOf(6, 1, (lesson) => ({ glidepathRms: 0.5 + sign * 0.03 * lesson }))),
        'glidepath-final',
      ).trend.change;
    expect([change(-1), change(1)]).toEqual(['perhaps-better', 'perhaps-worse']);
  });

  it('leaves no change out: an interval that ends at none is not sure', () => {
    const record = recordOf(lessonsOf(8, 1, (lesson) => ({ glidepathRms: lesson === 8 ? 0.1 : 0.2 })));
    expect(lineOf(record, 'glidepath-final').trend).toMatchObject({ change: 'not-sure', slopePerLesson: 0 });
  });

  it('says nothing of how far, where most lessons have the same figure', () => {
    const stability = (lesson: number) => ({
      stability: lesson % 3 === 0 ? ('not-met' as const) : ('met' as const),
    });
    const record = recordOf(lessonsOf(20, 1, (lesson) => ({ verdicts: stability(lesson) })));
    expect(lineOf(record, 'stability').trend).toMatchObject({
      change: 'not-sure',
      interval: null,
      why: 'Too many lessons have the same figure for more to be told.',
    });
    expect(lineOf(record, 'minimums').trend).toMatchObject({ interval: { low: 0, high: 0 }, why: null });
  });

  it('counts lessons without a figure as lessons that went by', () => {
    const made = lessonsOf(9, 1, (lesson) => ({
      ...falling(lesson),
      ...(lesson === 4 && { verdicts: { 'glidepath-final': 'not-assessed' as const } }),
    }));
    const { trend } = lineOf(recordOf(made), 'glidepath-final');
    expect(trend.lessons).toBe(8);
    expect(trend.slopePerLesson).toBeCloseTo(-0.03, 12);
  });
});

describe('what is compared', () => {
  it.each([
    ['another standard', { standard: 'skill-test' }, '2 judged by Title of skill-test.'],
    [
      'another text of the standard',
      { standardKey: 'tighter' },
      '2 judged by another version of the same standard.',
    ],
    [
      'another version',
      { engine: '0.0.9' },
      '2 debriefed by version 0.0.9 of the program. `halfdot recompute` makes the debriefs of older versions anew.',
    ],
    ['flown coupled', { flown: 'coupled' as const }, '2 flown coupled.'],
  ])('never holds two kinds: %s', (_name, other, sentence) => {
    const record = recordOf([
      ...lessonsOf(3, 1),
      ...lessonsOf(2, 1, (lesson) => ({ lesson: lesson + 10, ...other })),
    ]);
    expect(record.compared).toMatchObject({
      approaches: 3,
      flown: null,
      standard: { id: 'instrument-rating' },
    });
    expect(record.leftOut).toEqual([{ why: 'not-comparable', count: 2, later: 2, sentence }]);
    // Whoever reads the first sentence knows that it is not of the last lessons.
    expect(progressSentence(record)).toContain('2 approaches flown since are left out.');
    expect(lineOf(record, 'minimums').verdicts.met).toBe(3);
  });

  it('is what was flown last, where two are as large', () => {
    const hand = lessonsOf(2, 1, () => ({ flown: 'hand-flown' }));
    const later = lessonsOf(2, 1, (lesson) => ({ lesson: lesson + 5 }));
    expect(recordOf([...later, ...hand]).compared!.flown).toBeNull();
  });

  it('is what was flown by hand, though more was flown coupled; coupled alone, it says so', () => {
    const hand = lessonsOf(2, 1, () => ({ flown: 'hand-flown' }));
    const coupled = lessonsOf(6, 1, (lesson) => ({ lesson: lesson + 5, flown: 'coupled' }));
    expect(recordOf([...coupled, ...hand]).compared!.flown).toBe('hand-flown');
    expect(progressSentence(recordOf(coupled))).toMatch(/^Over 6 coupled approaches in 6 lessons/);
  });

  it('says that nothing changed for sure where all is perhaps', () => {
    const record = recordOf(lessonsOf(6, 1, (lesson) => ({ glidepathRms: 0.5 - 0.03 * lesson })));
    expect(progressSentence(record)).toContain(
      'perhaps improved in glidepath on final; nothing changed for sure.',
    );
  });

  it('says where what was left out is told by another debrief', () => {
    const log = 'the same log';
    const record = recordOf([
      ...lessonsOf(2, 1),
      { lesson: 3, log },
      { lesson: 3, log, standard: 'skill-test' },
    ]);
    expect(record.leftOut[0]!.sentence).toBe(
      '1 judged by Title of skill-test. 1 of them counted above in another debrief.',
    );
  });

  it('counts a flight once that was debriefed twice, and says so', () => {
    const record = recordOf([
      { log: 'a' },
      { log: 'a', minute: 1 },
      { log: 'a', minute: 20 },
      { log: 'b', minute: 1 },
    ]);
    expect(record.compared!.approaches).toBe(3);
    expect(record.leftOut).toMatchObject([{ why: 'same-approach', count: 1 }]);
  });

  it('leaves out passes and what cannot be read, and counts both', () => {
    const record = recordOf([{}, { minute: 20, kind: 'visual-final' }], { unreadable: ['a.csv', 'b.csv'] });
    expect(record.compared!.approaches).toBe(1);
    expect(record.leftOut).toMatchObject([
      { why: 'not-an-approach', count: 1 },
      { why: 'unreadable', count: 2, sentence: expect.stringContaining('a.csv, b.csv') },
    ]);
  });
});

describe('what to practise', () => {
  const notMet = (id: string) => ({ verdicts: { [id]: 'not-met' as const } });

  it('is what was not met most often in the last three lessons, with its counts', () => {
    const { practise } = recordOf([
      ...lessonsOf(3, 3, () => notMet('localizer-final')),
      ...lessonsOf(3, 2, (lesson, i) => ({
        lesson: lesson + 3,
        ...(i === 0 ? notMet('glidepath-final') : { verdicts: { 'glidepath-final': 'unclear' } }),
      })),
    ]);
    expect(practise).toMatchObject({
      criterion: 'glidepath-final',
      lessons: 3,
      sentence: 'Glidepath on final: not met in 3 of 3 approaches in the last 3 lessons (besides 3 unclear).',
    });
  });

  it('names what was not met as often', () => {
    const { practise } = recordOf([{ verdicts: { stability: 'not-met', minimums: 'not-met' } }]);
    expect(practise!.sentence).toBe(
      'Stable from 1,000 ft: not met in 1 of 1 approach in the last lesson. As often not met: minimums.',
    );
  });

  it('is nothing where all was met, and where nothing could be judged', () => {
    expect(recordOf([{}]).practise).toMatchObject({
      criterion: null,
      sentence: 'Of what could be judged in the last lesson, nothing was not met.',
    });
    expect(recordOf([{ verdicts: { stability: 'unclear' } }]).practise!.sentence).toBe(
      'Of what could be judged in the last lesson, nothing was not met. Mostly unclear: stable from 1,000 ft.',
    );
    const ids = recordOf([{}]).lines.map(({ id }) => id);
    const unjudged = { verdicts: Object.fromEntries(ids.map((id) => [id, 'not-assessed' as const])) };
    expect(recordOf([unjudged]).practise!.sentence).toBe('Nothing could be judged in the last lesson.');
  });
});
