import { describe, expect, it } from 'vitest';
import { cycleIssue } from '../../../core/records/cycle-issue.ts';

describe('a day outside of the cycle', () => {
  it.each([
    ['2026-09-02', 'records-cycle-not-yet'],
    ['2026-09-03', undefined],
    ['2026-09-30', undefined],
    ['2026-10-01', 'records-cycle-past'],
  ])('2609 on %s: %s', (day, code) => expect(cycleIssue('2609', day)?.code).toBe(code));

  it('is a caution that names both', () => {
    expect(cycleIssue('2609', '2026-10-01')).toMatchObject({
      severity: 'caution',
      message:
        'The records are of cycle 2609, 2026-09-03 to 2026-09-30: on 2026-10-01 they are no longer in force.',
    });
  });

  it('cannot be told of a file without a cycle, nor of a cycle that is none', () => {
    expect(cycleIssue(null, '2026-10-01')?.code).toBe('records-cycle-unknown');
    expect(cycleIssue('2677', '2026-10-01')?.code).toBe('records-cycle-unknown');
  });
});
