import { describe, expect, it } from 'vitest';
import type { ApproachDebrief } from '../../../core/debrief/debrief.ts';
import type { Verdict } from '../../../core/standard/judgement.ts';
import { wentOn, type WentOn } from '../../../core/progress/went-on.ts';

const THRESHOLD_FT = 420;

function after(
  verdict: Verdict,
  outcome: ApproachDebrief['outcome'],
  events: readonly [kind: string, altitudeFt: number | null][] = [],
): WentOn {
  const approach = {
    criteria: [{ id: 'stability', verdict }],
    outcome,
    events: events.map(([kind, altitudeFt]) => ({ kind, altitudeFt })),
  };
  return wentOn(approach as unknown as ApproachDebrief, THRESHOLD_FT);
}

describe('what became of an approach', () => {
  it('is told by the verdict alone where it was stable, or where nobody can say', () => {
    expect(after('met', 'landed')).toBe('stable');
    expect(after('met', 'missed-approach', [['missed-approach-start', 1400]])).toBe('stable');
    expect(after('unclear', 'landed')).toBe('unclear');
    expect(after('not-assessed', 'landed')).toBe('not-assessed');
    expect(wentOn({ criteria: [], outcome: 'landed', events: [] } as never, 0)).toBe('not-assessed');
  });

  it('is a going around where the missed approach begins high, and a continuing where it begins at minimums', () => {
    expect(after('not-met', 'missed-approach', [['missed-approach-start', 721]])).toBe(
      'unstable-went-around',
    );
    expect(after('not-met', 'missed-approach', [['missed-approach-start', 719]])).toBe('unstable-continued');
    const passed = [
      ['decision-altitude', 820],
      ['missed-approach-start', 800],
    ] as [string, number][];
    expect(after('not-met', 'missed-approach', passed)).toBe('unstable-continued');
    expect(after('not-met', 'broken-off')).toBe('unstable-went-around');
  });

  it.each(['landed', 'touch-and-go', 'low-approach', 'sidestepped', 'circled'] as const)(
    'is a continuing where it ends as %s',
    (outcome) => expect(after('not-met', outcome)).toBe('unstable-continued'),
  );

  it('is unclear where the log ends before it, or holds no height of it', () => {
    expect(after('not-met', 'incomplete')).toBe('unclear');
    expect(after('not-met', 'missed-approach', [['missed-approach-start', null]])).toBe('unclear');
    expect(after('not-met', 'missed-approach')).toBe('unclear');
  });
});
