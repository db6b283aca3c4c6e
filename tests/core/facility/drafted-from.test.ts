import { describe, expect, it } from 'vitest';
import { defineFacility } from '../../../core/analyze.ts';
import { checkFacility } from '../../../core/facility/contradictions.ts';
import { parseFacility } from '../../../core/facility/parse-facility.ts';
import { LEAST } from './full-facility.ts';

const SHA = 'ab'.repeat(32);
const drafted = (unconfirmed: readonly string[]) =>
  JSON.stringify({
    ...LEAST,
    origin: {
      sources: { 'runway.threshold.latDeg': 'from a landing' },
      landing: { logSha256: SHA, unconfirmed },
    },
  });

function said(text: string): string[] {
  const defined = defineFacility(text, 'f.json');
  if (!defined.ok) throw new Error(defined.refusal.message);
  const { facility, geometry } = defined.value;
  return checkFacility(facility, geometry, null).flatMap(({ code, message }) =>
    code === 'facility-draft' ? [message] : [],
  );
}

describe('a facility that was drafted from a landing', () => {
  it('says so until every value is confirmed, and names some of them', () => {
    const all = ['runway.threshold.latDeg', 'runway.threshold.lonDeg', 'a', 'b', 'c'];
    expect(said(drafted(all))).toEqual([
      'This facility is a draft from a landing: 5 values of it are not confirmed (runway.threshold.latDeg, runway.threshold.lonDeg, a and 2 more).',
    ]);
    expect(said(drafted(['a', 'b', 'c', 'd']))[0]).toContain('(a, b, c and d)');
    expect(said(drafted(['a']))).toEqual([
      'This facility is a draft from a landing: 1 value of it is not confirmed (a).',
    ]);
    expect(said(drafted([]))).toEqual([]);
  });

  it('is refused where its origin is no origin', () => {
    const wrong = (origin: unknown) => parseFacility(JSON.stringify({ ...LEAST, origin }), 'f.json');
    for (const origin of [
      { landing: { logSha256: 'x', unconfirmed: [] } },
      { landing: { logSha256: SHA } },
      { sources: ['a'] },
      { sources: { a: 3 } },
      { other: 1 },
    ])
      expect(wrong(origin).ok).toBe(false);
    expect(wrong({}).ok).toBe(true);
  });
});
