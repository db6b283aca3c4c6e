import { expect, it } from 'vitest';
import { agreedDecisionAltitude } from '../../../core/briefing/decision-altitude.ts';
import { FULL, geometryOf, LEAST, withValue } from '../facility/full-facility.ts';

const GEOMETRY = geometryOf(FULL);
const agreed = (first: number | null, again: number | null) => agreedDecisionAltitude(first, again, GEOMETRY);

it('is the value that was typed twice', () => {
  expect(agreed(312, 312)).toMatchObject({ ok: true, value: 312 });
});

it('is none where none was typed, whatever the facility has', () => {
  expect(GEOMETRY.decisionAltitudeFt).toBe(312);
  expect(agreed(null, null)).toMatchObject({ ok: true, value: null });
});

it.each([
  [312, null, 'decision-altitude-once', 'type it again'],
  [null, 312, 'decision-altitude-once', 'type it again'],
  [312, 321, 'decision-altitudes-differ', '312 ft and 321 ft'],
  // The touchdown zone of this facility is at 112 ft, its path at the fix at 1,790 or so.
  [112, 112, 'decision-altitude-impossible', 'not above the touchdown zone, which is at 112 ft'],
  [1900, 1900, 'decision-altitude-impossible', 'not below the glidepath at the fix'],
])('%s and %s are refused: %s', (first, again, code, words) => {
  const refused = agreed(first, again);
  if (refused.ok) throw new Error('it was taken');
  expect(refused.refusal.code).toBe(code);
  expect(refused.refusal.message).toContain(words);
});

it('below sea level it is as good as any', () => {
  const low = geometryOf(withValue(LEAST, 'runway.threshold.elevationFt', -900));
  expect(agreedDecisionAltitude(-700, -700, low)).toMatchObject({ ok: true, value: -700 });
});
