import { describe, expect, it } from 'vitest';
import { defineFacility } from '../../../core/analyze.ts';
import { checkFacility } from '../../../core/facility/contradictions.ts';
import { parseFacility } from '../../../core/facility/parse-facility.ts';
import { LEAST } from './full-facility.ts';

const SHA = 'ab'.repeat(32);
/** As `core/records/landing-draft.ts` leaves them. */
const OF_A_LANDING = [
  'runway.threshold.latDeg',
  'runway.threshold.lonDeg',
  'runway.threshold.elevationFt',
  'runway.trueBearingDeg',
  'runway.lengthFt',
  'glidepath.angleDeg',
  'glidepath.thresholdCrossingHeightFt',
];
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
  it('says so until every value is confirmed, and names all that a landing leaves open in plain words', () => {
    expect(said(drafted(OF_A_LANDING))).toEqual([
      'This facility is a draft from a landing: 6 values of it are not confirmed (position of the threshold, elevation of the threshold, true bearing of the runway, length of the runway, glidepath angle and threshold crossing height).',
    ]);
    expect(said(drafted(['runway.lengthFt']))).toEqual([
      'This facility is a draft from a landing: 1 value of it is not confirmed (length of the runway).',
    ]);
    expect(said(drafted([...'abcdefgh']))[0]).toContain('(a, b, c, d, e, f and 2 more)');
    expect(said(drafted([...'abcdefg']))[0]).toContain('(a, b, c, d, e, f and g)');
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
