import { describe, expect, it } from 'vitest';
import type { Limit } from '../../../core/standard/standard.ts';
import { judgeTimed, type TimedQuestion } from '../../../core/standard/timed-criterion.ts';

const LIMIT: Limit = { lower: -0.75, upper: 0.75, code: null, source: 'made', status: 'own choice' };

/** A needle by [second, fraction of full scale], at most so far off, over a final of 200 s. */
function question(
  points: readonly (readonly [number, number])[],
  off: number,
  more: Partial<TimedQuestion> = {},
) {
  const timeS = Float64Array.from(points, ([s]) => s);
  const value = Float64Array.from(points, ([, v]) => v);
  return judgeTimed({
    id: 'made',
    title: 'Made',
    unit: 'full scale',
    limit: LIMIT,
    limitWords: '¾ scale',
    counted: [{ startS: timeS[0]!, endS: timeS.at(-1)! }],
    parts: [{ timeS, value }],
    flownNm: [{ timeS, value: timeS.map((s) => s / 40) }],
    halfWidths: [{ timeS, value: value.map(() => off) }],
    madeUpToS: null,
    near: 0.05,
    halfFloor: 0.2,
    prompt: { depth: 0.15, stop: 1, lowFromS: Infinity, decisionS: null, finalS: 200 },
    endedBy: null,
    openEnd: null,
    ...more,
  });
}

describe('three readings of one needle', () => {
  // Beyond ¾ for a second and a bit, three times; the dips between lie within 0.05 of the limit, or do not.
  const hump = (s: number, dip: number, peak: number) =>
    [
      [s, dip],
      [s + 0.3, peak],
      [s + 1.2, peak],
      [s + 1.5, dip],
    ] as const;
  const threeHumps = (dip: number, peak: number) => [
    [0, 0] as const,
    ...hump(50, dip, peak),
    ...hump(51.6, dip, peak),
    ...hump(53.2, dip, peak),
    [200, 0] as const,
  ];

  it('do not prove what only falls apart when it is moved inward', () => {
    // One excursion of 5 s as flown; 0.02 farther in the dips are 0.69, and it reads as three.
    const found = question(threeHumps(0.71, 0.8), 0.02);
    expect(found.excursions).toHaveLength(1);
    expect(found.excursions[0]!.prompt).toBe(true);
    expect(found.verdict).toBe('unclear');
  });

  it('do not clear what only grows together when it is moved outward', () => {
    // Three excursions as flown, which is one too many; 0.02 farther out they read as one of less than 5 s.
    const found = question(threeHumps(0.69, 0.765), 0.02);
    expect(found.excursions).toHaveLength(3);
    expect(found.verdict).toBe('unclear');
  });

  it('give their reason where whole seconds do not tell them apart', () => {
    // 4 s to a tenth in all three; 0.89 + 0.02 is deeper than what is prompt.
    const steep = [
      [0, 0] as const,
      [50, 0] as const,
      [50.1, 0.89] as const,
      [54, 0.89] as const,
      [54.1, 0] as const,
    ];
    const found = question([...steep, [200, 0]], 0.02);
    expect(found.verdict).toBe('unclear');
    expect(found.why).toBe('beyond ¾ scale for 4 s, promptly corrected, though given its error not surely');
  });

  it('tell the error beside what was not recorded', () => {
    const found = question(
      [
        [0, 0],
        [50, 0],
        [60, 0.77],
        [80, 0.77],
        [90, 0],
        [200, 0],
      ],
      0.04,
      {
        counted: [{ startS: -5, endS: 200 }],
      },
    );
    expect(found.verdict).toBe('unclear');
    expect(found.why).toBe(
      'beyond ¾ scale for 21 s, 0 to 22 s given its error, but 5 s of it were not recorded',
    );
  });
});
