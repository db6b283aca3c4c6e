import { describe, expect, it } from 'vitest';
import { NOTHING_STATED, type Stated } from '../../../core/standard/stated.ts';
import { redactedStated } from '../../../electron/library/redacted-debrief.ts';

const REMARK = {
  approachUtc: '2026-05-01T10:00:00Z',
  finding: 'hunting',
  verdict: 'accepted',
  words: 'Rowan, look at the horizon.',
  answer: 'Juniper said so before.',
} as const;

describe('what is stated, without what somebody wrote', () => {
  it('holds nothing of what was said to findings', () => {
    const stated: Stated = { ...NOTHING_STATED, remarks: [REMARK] };
    expect(redactedStated(stated)).toEqual(NOTHING_STATED);
  });

  it('stays as it was where it is older than findings', () => {
    const { remarks: _, ...older } = NOTHING_STATED;
    expect(redactedStated(older as Stated)).toEqual(older);
  });
});
