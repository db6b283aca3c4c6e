import { describe, expect, it } from 'vitest';
import { withRemark } from '../../renderer/state/remarks.ts';

const ABOUT = { approachUtc: '2026-05-01T10:00:00Z', finding: 'late-on-localizer' };
const OTHER = { ...ABOUT, finding: 'hunting', verdict: null, words: null, answer: 'I know.' };

describe('a remark', () => {
  it('is added, changed, and none any more when it says nothing', () => {
    const accepted = withRemark([OTHER], ABOUT, { verdict: 'accepted' });
    expect(accepted).toEqual([OTHER, { ...ABOUT, verdict: 'accepted', words: null, answer: null }]);
    const reworded = withRemark(accepted, ABOUT, { words: 'Turn sooner.' });
    expect(reworded).toEqual([OTHER, { ...ABOUT, verdict: 'accepted', words: 'Turn sooner.', answer: null }]);
    const taken = withRemark(reworded, ABOUT, { words: null });
    expect(withRemark(taken, ABOUT, { verdict: null })).toEqual([OTHER]);
  });

  it('of one approach is none of another', () => {
    const elsewhere = { ...ABOUT, approachUtc: '2026-05-01T11:00:00Z' };
    const both = withRemark(withRemark([], ABOUT, { answer: 'a' }), elsewhere, { answer: 'b' });
    expect(both.map(({ answer }) => answer)).toEqual(['a', 'b']);
  });
});
