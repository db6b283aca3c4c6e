import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { readFlight, type Flight } from '../../../core/analyze.ts';
import { fittingFacilities } from '../../../renderer/worker/fit-job.ts';
import { idle } from '../../core/log/reading.ts';
import { ROOT } from '../../house/source-files.ts';

const sample = (name: string) => readFileSync(join(ROOT, 'samples', name), 'utf8');
const SHA = 'cd'.repeat(32);
const PETRELHOLM = JSON.parse(sample('petrelholm-ils-07.json')) as object;
const draft = (logSha256: string, unconfirmed: readonly string[]) =>
  JSON.stringify({ ...PETRELHOLM, origin: { landing: { logSha256, unconfirmed } } });

let flight: Flight;
beforeAll(async () => {
  const text = sample('touch-and-go-then-again.csv');
  const source = { name: 'two.csv', sha256: () => SHA, size: text.length, chunks: [text] };
  const read = await readFlight(source, null, {}, idle);
  if (!read.ok) throw new Error(read.refusal.message);
  flight = read.value;
});

describe('the facilities that a log was flown to', () => {
  it('have drafts that nobody has confirmed behind all others', () => {
    const facilities = [
      { id: 'open', text: draft('ab'.repeat(32), ['glidepath.angleDeg']) },
      { id: 'confirmed', text: draft('ab'.repeat(32), []) },
      { id: 'elsewhere', text: sample('choughfell-ils-32.json') },
      { id: 'published', text: JSON.stringify(PETRELHOLM) },
    ];
    expect(fittingFacilities(facilities, flight)).toEqual(['confirmed', 'published', 'open']);
  });

  it('are not those that were drafted from it, nor those that cannot be used', () => {
    const facilities = [
      { id: 'own', text: draft(SHA, []) },
      { id: 'broken', text: '{' },
    ];
    expect(fittingFacilities(facilities, flight)).toEqual([]);
  });
});
