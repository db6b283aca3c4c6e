import { describe, expect, it } from 'vitest';
import { draftOf, without, withConfirmedIn, withTyped } from '../../renderer/state/facility-draft.ts';
import { FACILITY_FIELDS } from '../../renderer/state/facility-fields.ts';
import { isUnconfirmed, sourceOf, unconfirmedIn } from '../../renderer/state/facility-origin.ts';

const field = (path: string) => FACILITY_FIELDS.find((one) => one.path.join('.') === path)!;
const LATITUDE = ['runway', 'threshold', 'latDeg'];
const RECORD = 'official record, cycle 2609';
const TEXT = JSON.stringify({
  format: 'halfdot-facility/1',
  name: 'Duneholm ILS 07',
  runway: { designator: '07', threshold: { latDeg: -31.2, lonDeg: -16.4, elevationFt: 34 } },
  origin: {
    sources: { 'runway.threshold.latDeg': RECORD, 'runway.threshold.lonDeg': RECORD, name: RECORD },
    landing: {
      logSha256: 'ab'.repeat(32),
      unconfirmed: ['runway.threshold.latDeg', 'runway.threshold.lonDeg', 'runway.threshold.elevationFt'],
    },
  },
});
function rootOf(text: string) {
  const draft = draftOf(text);
  if (!draft.ok) throw new Error(draft.why);
  return draft.root;
}

describe('where the values of a facility come from', () => {
  it('stands beside each', () => {
    expect(sourceOf(rootOf(TEXT), LATITUDE)).toBe(RECORD);
    expect(sourceOf(rootOf(TEXT), ['glidepath', 'angleDeg'])).toBeNull();
    expect(isUnconfirmed(rootOf(TEXT), LATITUDE)).toBe(true);
  });

  it('is the user’s own hand once something else was typed, which confirms it; of the others it stays', () => {
    const typed = rootOf(withTyped(TEXT, field('runway.threshold.latDeg'), 'S31 12.6'));
    expect([sourceOf(typed, LATITUDE), isUnconfirmed(typed, LATITUDE)]).toEqual([null, false]);
    expect(sourceOf(typed, ['runway', 'threshold', 'lonDeg'])).toBe(RECORD);
    expect(unconfirmedIn(typed)).toEqual(['runway.threshold.lonDeg', 'runway.threshold.elevationFt']);
    // The same again is no other value.
    expect(withTyped(TEXT, field('runway.threshold.latDeg'), '-31.2')).toBe(TEXT);
  });

  it('goes with a whole group that is taken out', () => {
    const { origin } = rootOf(without(TEXT, ['runway', 'threshold']));
    expect(origin).toEqual({
      sources: { name: RECORD },
      landing: { logSha256: 'ab'.repeat(32), unconfirmed: [] },
    });
  });

  it('stays when a value is confirmed, one or all of them, and the log that it was drafted from is never forgotten', () => {
    const one = rootOf(withConfirmedIn(TEXT, LATITUDE));
    expect([sourceOf(one, LATITUDE), unconfirmedIn(one).length]).toEqual([RECORD, 2]);
    const paths = unconfirmedIn(rootOf(TEXT)).map((path) => path.split('.'));
    const all = rootOf(paths.reduce(withConfirmedIn, TEXT));
    expect(unconfirmedIn(all)).toEqual([]);
    expect(all['origin']).toMatchObject({ landing: { logSha256: 'ab'.repeat(32) } });
  });

  it('keeps the cycle of the records as long as a value is left of them', () => {
    const { origin, ...facility } = JSON.parse(TEXT) as { origin: object };
    const text = JSON.stringify({ ...facility, origin: { cycle: '2609', ...origin } });
    const typed = withTyped(text, field('runway.threshold.latDeg'), 'S31 12.6');
    expect(rootOf(typed)['origin']).toMatchObject({ cycle: '2609' });
    expect(rootOf(withConfirmedIn(text, LATITUDE))['origin']).toMatchObject({ cycle: '2609' });
    const renamed = withTyped(without(typed, ['runway', 'threshold']), field('name'), 'Mine');
    expect(rootOf(renamed)['origin']).not.toHaveProperty('cycle');
  });

  it('leaves a facility without any as it is', () => {
    const plain = JSON.stringify({ name: 'A' });
    expect(rootOf(withTyped(plain, field('name'), 'B'))).toEqual({ name: 'B' });
    expect(rootOf(withConfirmedIn(plain, ['name']))).toEqual({ name: 'A' });
  });
});
