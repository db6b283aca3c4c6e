import { describe, expect, it } from 'vitest';
import { DEFAULT_STANDARD } from '../../../core/standard/standards.ts';
import { tallyOf, WAYS } from '../../support/simulate/tally.ts';

const SEEDS = Array.from({ length: 300 }, (_, seed) => seed);

/** `npm run simulate` flies 2,000 and holds the band to ± 1 %. */
describe('of 300 flights of chance with the errors of an augmented receiver', () => {
  it('the band holds the truth 95 % of the time, and verdicts are hardly ever wrong and seldom unclear', async () => {
    const tally = await tallyOf(WAYS.augmented, SEEDS, DEFAULT_STANDARD);
    expect(tally.verdicts).toBeGreaterThan(600);
    expect(Math.abs(tally.localizerWithin - 0.95)).toBeLessThan(0.025);
    expect(Math.abs(tally.glidepathWithin - 0.95)).toBeLessThan(0.025);
    expect(tally.metWrong).toBeLessThan(0.025);
    expect(tally.notMetWrong).toBeLessThan(0.025);
    expect(tally.unclear).toBeLessThan(0.1);
  }, 300_000);
});

describe('of 60 flights of chance with the errors of a phone', () => {
  it('the band, narrowed by the roll of those that landed, holds the truth, and no verdict is wrong', async () => {
    const tally = await tallyOf(WAYS.phone, SEEDS.slice(0, 60), DEFAULT_STANDARD);
    expect(tally.glidepathWithin).toBeGreaterThan(0.92);
    expect(tally.metWrong).toBeLessThan(0.025);
    expect(tally.notMetWrong).toBeLessThan(0.025);
    // A phone cannot tell more: most of what needs a height is open.
    expect(tally.unclear).toBeGreaterThan(0.2);
  }, 120_000);
});
