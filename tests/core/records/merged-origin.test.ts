import { describe, expect, it } from 'vitest';
import { draftFile, draftOfFile } from '../../../core/records/draft-file.ts';
import type { Drafted } from '../../../core/records/drafted.ts';
import { draftedFrom } from '../../../core/records/leaves.ts';
import { merged } from '../../../core/records/merged.ts';
import { recordWords } from '../../../core/records/record-words.ts';

const draft = (origin: string, values: Record<string, string | number>, from: Partial<Drafted> = {}) => ({
  ...draftedFrom(
    Object.entries(values).map(([path, value]) => ({ path, value, origin })),
    { issues: [] },
  ),
  ...from,
});
const records = (cycle: string, values: Record<string, string | number>) =>
  draft(recordWords(cycle).from('runway 07'), values, { cycle });
const LANDING = { logSha256: 'ab'.repeat(32), unconfirmed: ['runway.lengthFt', 'glidepath.angleDeg'] };
const landed = draft('a landing', { 'runway.lengthFt': 2713, 'glidepath.angleDeg': 3 }, { landing: LANDING });
const originOf = (drafted: Drafted) => JSON.parse(draftFile(drafted)).origin;

describe('the cycle of two sources', () => {
  it('is the older one, as long as a value of it is taken', () => {
    const old = records('2602', { 'runway.lengthFt': 6000, 'runway.widthFt': 148 });
    const now = records('2609', { 'runway.lengthFt': 6010 });
    expect(merged(now, old, {}).cycle).toBe('2602');
    expect(merged(now, records('2602', { 'runway.lengthFt': 6000 }), {}).cycle).toBe('2609');
    expect(merged(draft('a table', { 'runway.lengthFt': 6000 }), draft('b', {}), {})).not.toHaveProperty(
      'cycle',
    );
  });
});

describe('a draft from a landing, taken together with another source', () => {
  it('has those of its values still unconfirmed that nothing better was there for', () => {
    const { landing } = merged(records('2609', { 'runway.lengthFt': 6000 }), landed, {});
    expect(landing).toEqual({ ...LANDING, unconfirmed: ['glidepath.angleDeg'] });
    const chosen = merged(records('2609', { 'runway.lengthFt': 6000 }), landed, {
      'runway.lengthFt': 'other',
    });
    expect(chosen.landing).toEqual(LANDING);
  });

  it('is never forgotten to come from its log', () => {
    const all = records('2609', { 'runway.lengthFt': 6000, 'glidepath.angleDeg': 3.2 });
    expect(merged(all, landed, {}).landing).toEqual({ ...LANDING, unconfirmed: [] });
  });
});

describe('a facility file as a source', () => {
  it('gives back the cycle and the landing that were written into it', () => {
    const both = { ...landed, cycle: '2609' };
    expect(originOf(both)).toMatchObject({ cycle: '2609', landing: LANDING });
    expect(draftOfFile(draftFile(both))).toMatchObject({ cycle: '2609', landing: LANDING });
    expect(Object.keys(originOf(draft('a table', {})))).toEqual(['sources']);
  });

  it('has none where its origin is broken', () => {
    for (const origin of [3, { cycle: 2609, landing: 'a log' }, { landing: { logSha256: 'x' } }]) {
      const read = draftOfFile(JSON.stringify({ name: 'A', origin }));
      expect(read).not.toHaveProperty('cycle');
      expect(read).not.toHaveProperty('landing');
    }
  });
});
