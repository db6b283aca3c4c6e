import { describe, expect, it } from 'vitest';
import { windFrom, windProblem, windWords } from '../../renderer/state/wind-text.ts';

describe('a wind as it is typed', () => {
  it.each([
    ['250/18', { fromTrueDeg: 250, speedKt: 18 }],
    ['5 / 7.5', { fromTrueDeg: 5, speedKt: 7.5 }],
    ['360/100', { fromTrueDeg: 360, speedKt: 100 }],
  ])('%s is one', (text, wind) => {
    expect(windFrom(text)).toEqual(wind);
    expect(windProblem(text)).toBeNull();
  });

  it.each(['361/5', '250/101', '250', '250/', 'calm', '-10/5'])('%s is none, and that is said', (text) => {
    expect(windFrom(text)).toBeNull();
    expect(windProblem(text)).toMatch(/^Write it as 250\/18/);
  });

  it('is written as it is said', () => {
    expect(windWords({ fromTrueDeg: 70, speedKt: 12.5 })).toBe('070/12.5');
    expect(windWords(null)).toBe('');
  });
});
