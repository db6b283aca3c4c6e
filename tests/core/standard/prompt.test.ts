import { describe, expect, it } from 'vitest';
import type { Excursion } from '../../../core/approach/excursions.ts';
import { judgeExcursions, type PromptRule } from '../../../core/standard/prompt.ts';
import type { Limit } from '../../../core/standard/standard.ts';

const band = (lower: number | null, upper: number | null): Limit => ({
  lower,
  upper,
  code: null,
  source: 'made for this test',
  status: 'own choice',
});
const RULE: PromptRule = { depth: 0.15, stop: 1, lowFromS: 150, decisionS: 200, finalS: 200 };

function out(startS: number, lastsS: number, peak = 0.8): Excursion {
  const side = peak > 0 ? 'above' : 'below';
  return { startS, endS: startS + lastsS, outsideS: lastsS, peak, peakS: startS, side };
}

const prompt = (excursions: Excursion[], rule: Partial<PromptRule> = {}, limit = band(-0.75, 0.75)) =>
  judgeExcursions(excursions, limit, { ...RULE, ...rule }).map((judged) => judged.prompt);

/** Every figure is our own choice (design, section 9). */
describe('what is promptly corrected', () => {
  it.each([
    ['exactly 5 s', out(100, 5), true],
    ['more than 5 s', out(100, 5.01), false],
    ['exactly 3 s below 500 ft', out(160, 3), true],
    ['more than 3 s below 500 ft', out(160, 3.01), false],
    ['5 s that end exactly at 500 ft', out(145, 5), true],
    ['5 s that end below 500 ft', out(146, 5), false],
    ['exactly 0.15 beyond', out(100, 4, 0.9), true],
    ['more than 0.15 beyond', out(100, 4, 0.9001), false],
    ['exactly 0.15 beyond on the other side', out(100, 4, -0.9), true],
    ['more than 0.15 beyond on the other side', out(100, 4, -0.9001), false],
    ['at decision altitude', out(198, 2.5), false],
    ['just over at decision altitude', out(198, 2), false],
    ['over before decision altitude', out(197, 2.9), true],
    ['begun at decision altitude', out(200, 1), false],
    ['begun after decision altitude', out(200.1, 1), true],
  ])('%s: %o is %s', (_, excursion, expected) => {
    expect(prompt([excursion])).toEqual([expected]);
  });

  it('stops short of full scale, whatever the limit', () => {
    const wide = band(-0.9, 0.9);
    expect(prompt([out(100, 4, 0.999)], {}, wide)).toEqual([true]);
    expect(prompt([out(100, 4, 1)], {}, wide)).toEqual([false]);
    expect(prompt([out(100, 4, -1)], {}, wide)).toEqual([false]);
  });

  it('is at most two, and together at most 5 % of final', () => {
    expect(prompt([out(20, 5), out(50, 5)])).toEqual([true, true]);
    expect(prompt([out(20, 5), out(50, 5)], { finalS: 199 })).toEqual([false, false]);
    expect(prompt([out(20, 1), out(50, 1), out(80, 1)])).toEqual([false, false, false]);
  });

  it('one too deep does not condemn the other', () => {
    expect(prompt([out(20, 2), out(50, 2, 0.95)])).toEqual([true, false]);
  });

  it('knows no decision altitude where there was none, and of no excursion nothing', () => {
    expect(prompt([out(198, 2.5)], { decisionS: null })).toEqual([true]);
    expect(prompt([])).toEqual([]);
  });

  it('of a limit of one side looks at that side', () => {
    expect(prompt([out(100, 4, 1005)], { depth: 5, stop: Infinity }, band(null, 1000))).toEqual([true]);
    expect(prompt([out(100, 4, 1006)], { depth: 5, stop: Infinity }, band(null, 1000))).toEqual([false]);
  });
});
