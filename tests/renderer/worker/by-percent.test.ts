import { describe, expect, it } from 'vitest';
import { byPercent } from '../../../renderer/worker/by-percent.ts';

const told = (shares: readonly (number | null)[]): (number | null)[] => {
  const heard: (number | null)[] = [];
  const progress = byPercent((share) => heard.push(share));
  for (const share of shares) progress(share);
  return heard;
};

describe('byPercent', () => {
  it('tells of a long log no more than what is drawn', () => {
    const shares = Array.from({ length: 3001 }, (_, done) => done / 3000);
    const heard = told(shares);
    expect(heard).toHaveLength(101);
    expect(heard[0]).toBe(0);
    expect(Math.round(heard.at(-1)! * 100)).toBe(100);
  });

  it('tells the first share, and one that goes back', () => {
    expect(told([0, 0, 0.5, 0.501, 0.1])).toEqual([0, 0.5, 0.1]);
  });

  it('tells once that it is unknown', () => {
    expect(told([null, null, 0.2, null])).toEqual([null, 0.2, null]);
  });
});
