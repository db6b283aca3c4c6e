import { describe, expect, it } from 'vitest';
import { progressCsv } from '../../../core/progress/progress-csv.ts';
import { progressText } from '../../../core/progress/progress-text.ts';
import { lessonsOf, recordOf } from './made-up.ts';

const falling = (lesson: number) => ({ glidepathRms: 0.6 - 0.03 * lesson - (lesson % 2) * 0.01 });

describe('the page', () => {
  const goals = [
    { id: 'a', text: 'Hold the glidepath to 200 ft', agreedOn: '2026-05-02', reachedOn: '2026-05-09' },
    { id: 'b', text: 'Brief the missed approach', agreedOn: '2026-05-08', reachedOn: null },
  ];
  const made = lessonsOf(12, 2, (lesson) => ({
    ...falling(lesson),
    ...(lesson > 9 && { verdicts: { 'airspeed-final': 'not-met' as const } }),
  }));
  const text = progressText(recordOf([...made, { lesson: 13, engine: '0.0.9' }], { goals }));
  const joined = text.replaceAll(/\s+/g, ' ');

  it('begins with what changed, and says what it was judged by', () => {
    expect(joined).toMatch(
      /^Over 24 approaches in 12 lessons, from 1 May 2026 to 12 May 2026, Rowan Teal improved in glidepath on final; nothing else changed for sure\. 1 approach flown since is left out\. Judged by Source of instrument-rating; debriefed by version 0\.1\.0; not stated whether flown by hand or coupled\./,
    );
  });

  it('tells each criterion with its trend, its figures and how often it was met', () => {
    expect(joined).toMatch(
      /Glidepath on final: better by 0\.03\d of full scale a lesson \(between 0\.02\d and 0\.03\d\)\. RMS, lesson by lesson: 0\.56 0\.54 .* 0\.24 of full scale Inside the limit, in every lesson: 100 % of the distance 24 met, 0 not met, 0 unclear, 0 not assessed\./,
    );
    expect(joined).toContain('Localizer on final: the same in every lesson.');
    expect(joined).toContain('Level: the same in every lesson. Middle level, in every lesson: 4.0');
  });

  it('says which figures are by distance and which by time', () => {
    expect(joined).toContain(
      'Shares inside a limit are of the distance flown, RMS is over the recorded time.',
    );
  });

  it('says of debriefs of an earlier version that they tell no share', () => {
    const old = progressText(recordOf(lessonsOf(6, 1, () => ({ hasNoMiles: true })))).replaceAll(/\s+/g, ' ');
    expect(old).toContain('6 without a share: debriefed by a version that told no distance.');
    expect(old).not.toContain('Inside the limit');
  });

  it('says what to practise, the goals, what was left out, and the cautions', () => {
    expect(joined).toContain(
      'To practise: Airspeed on final: not met in 6 of 6 approaches in the last 3 lessons.',
    );
    expect(joined).toContain('● Hold the glidepath to 200 ft: reached on 9 May 2026, agreed on 2 May 2026');
    expect(joined).toContain('○ Brief the missed approach: not reached yet, agreed on 8 May 2026');
    expect(joined).toContain('Left out 1 debriefed by version 0.0.9 of the program.');
    expect(joined).toContain('Caution: For training debrief only, never for navigation.');
  });

  it('has no line of more than 100 columns', () => {
    expect(text.split('\n').filter((line) => line.length > 100)).toEqual([]);
  });

  it('says of too few that they are too few, and of nothing that there is nothing', () => {
    const few = progressText(recordOf(lessonsOf(2, 2)));
    expect(few).toMatch(/^Over 4 approaches in 2 lessons, .*, Rowan Teal flew too few to tell/);
    expect(few).toContain(
      'Glidepath on final: too few to tell: 4 approaches in 2 lessons; 6 in 3 are needed.',
    );
    expect(progressText(recordOf([]))).toMatch(/^No approach of Rowan Teal has been judged yet\.\n/);
  });

  it('tells how it goes so far where lessons are too few to be sure', () => {
    const text = progressText(recordOf(lessonsOf(4, 2, falling))).replaceAll(/\s+/g, ' ');
    expect(text).toMatch(
      /Glidepath on final: no sure change: better by 0\.0\d\d of full scale a lesson so far\. 4 lessons are too few to be sure; 5 are needed\./,
    );
  });

  it('tells a change between nothing and something, and one too small for its digits', () => {
    const text = (what: (lesson: number) => number) =>
      progressText(recordOf(lessonsOf(8, 1, (lesson) => ({ glidepathRms: what(lesson) })))).replaceAll(
        /\s+/g,
        ' ',
      );

    expect(text((lesson) => (lesson % 2 === 0 ? 0.1 : 0.2))).toContain(
      'no sure change: between no change and 0.033 better a lesson, in full scale.',
    );
    const uneven = [0.2, 0.11, 0.3, 0.15, 0.25, 0.12, 0.28, 0.18];
    expect(text((lesson) => uneven[lesson - 1]!)).toContain(
      'no sure change: between 0.043 worse and 0.025 better a lesson, in full scale.',
    );
    expect(text((lesson) => 0.2 - lesson / 100_000)).toContain(
      'better by less than 0.001 of full scale a lesson',
    );
  });
});

describe('the table', () => {
  it('has a line for each criterion and lesson, with the trend on each', () => {
    const record = recordOf(lessonsOf(8, 1, falling));
    const [head, ...rows] = progressCsv(record).trimEnd().split('\n');
    expect(rows).toHaveLength(8 * record.lines.length);
    const columns = head!.split(',');
    const cells = rows.find((row) => row.includes('glidepath-final'))!.split(',');
    const cell = Object.fromEntries(columns.map((column, i) => [column, cells[i]]));
    expect(cell).toMatchObject({
      student: 'Rowan Teal',
      lesson: '1',
      date: '2026-05-01',
      measure: 'rms',
      change: 'better',
    });
    expect(Number(cell['value'])).toBeCloseTo(0.56, 12);
    expect(Number(cell['slopePerLesson'])).toBeLessThan(0);
    expect(cell['flown']).toBe('');
  });

  it('of nothing is its head', () => expect(progressCsv(recordOf([]))).toMatch(/^student,[^\n]*\n$/));
});
