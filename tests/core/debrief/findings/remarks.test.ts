import { describe, expect, it } from 'vitest';
import type { DebriefFinding } from '../../../../core/debrief/debrief-finding.ts';
import { withRemarks } from '../../../../core/debrief/findings/remarks.ts';
import { findingLines, mainFindings } from '../../../../core/report/finding-lines.ts';

const finding = (id: string, rank: number): Omit<DebriefFinding, 'remark'> => ({
  id,
  kind: 'fault',
  rank,
  title: `Title of ${id}`,
  text: `Text of ${id}.`,
  practise: 'Fly it again.',
  evidence: {},
  fromUtc: '2026-05-01T10:05:00Z',
  toUtc: '2026-05-01T10:06:00Z',
});
const APPROACH = '2026-05-01T10:00:00Z';
const said = (id: string, more: object, approachUtc = APPROACH) => ({
  approachUtc,
  finding: id,
  verdict: null,
  words: null,
  answer: null,
  ...more,
});

describe('what is said to findings', () => {
  const findings = withRemarks([finding('a', 1), finding('b', 2), finding('c', 3)], APPROACH, [
    said('a', { words: 'My own words.', answer: 'Yes.' }),
    said('b', { verdict: 'dismissed' }),
    said('c', { words: 'of another approach' }, '2026-05-01T11:00:00Z'),
    said('gone', { verdict: 'accepted' }),
  ]);
  const page = findingLines({ findings }).join('\n').replaceAll(/\s+/g, ' ');

  it('stands with each of the same approach', () => {
    expect(findings.map(({ remark }) => remark)).toEqual([
      { verdict: null, words: 'My own words.', answer: 'Yes.' },
      { verdict: 'dismissed', words: null, answer: null },
      null,
    ]);
  });

  it('is told in place of the program’s words, and what was taken off is not told', () => {
    expect(page).toContain('Title of a. My own words.');
    expect(page).toContain('In the instructor’s words. The student: Yes.');
    expect(page).not.toContain('Text of a.');
    expect(page).not.toContain('Title of b');
    expect(page).toContain('Text of c.');
    expect(mainFindings({ findings }, 'fault').map(({ id }) => id)).toEqual(['a', 'c']);
  });
});
