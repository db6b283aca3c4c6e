import { describe, expect, it } from 'vitest';
import type { Drawing } from '../../../support/flight/drawn-flight.ts';
import { answersTo } from '../../../support/mistakes/answers.ts';
import { debriefOf } from '../drawn.ts';

const faultsByPhone = (glidepathFullScale: Drawing['glidepathFullScale']) =>
  debriefOf({ glidepathFullScale }, { receiver: 'phone' })
    .approaches[0]!.findings.filter(({ kind }) => kind === 'fault')
    .map(({ id, text }) => ({ id, text }));

/** A needle on straight lines through these, seconds and fractions of full scale: the fix is passed after 120 s. */
const through =
  (...points: readonly (readonly [s: number, fullScale: number])[]): Drawing['glidepathFullScale'] =>
  ({ timeS }) => {
    const next = points.findIndex(([s]) => s > timeS);
    if (next <= 0) return next === 0 ? points[0]![1] : points.at(-1)![1];
    const [[fromS, from], [toS, to]] = [points[next - 1]!, points[next]!];
    return from + ((to - from) * (timeS - fromS)) / (toS - fromS);
  };

describe('what the changes of a phone’s heights prove, whatever they are off by', () => {
  const chase = [
    [125, 0],
    [155, 0.7],
    [185, -0.7],
    [215, 0.6],
    [235, 0],
  ] as const;

  it('is a chase by its swings, where they leave open on which sides of the path it was', () => {
    const low = chase.map(([s, fullScale]) => [s, fullScale - 0.35] as const);
    const [fault] = faultsByPhone(through(...low));
    expect(fault!.id).toBe('chased-glidepath');
    expect(fault!.text).toMatch(/up 0\.\d of full scale, down 1\.\d and up 1\.\d/);
  });

  it('is no chase where it went away once and came back, a little too far', () => {
    const once = through([125, 0], [165, -1.1], [205, 0.3], [225, 0]);
    expect(faultsByPhone(once).map(({ id }) => id)).not.toContain('chased-glidepath');
  });

  it('is a needle beyond half scale, on one side or the other, where it moved by more than both', () => {
    const by = (share: number) => through(...chase.map(([s, v]) => [s, v * share] as const));
    expect(faultsByPhone(by(0.88)).map(({ id }) => id)).toEqual(['chased-glidepath']);
    expect(faultsByPhone(by(0.65))).toEqual([]);
  });
});

describe('what a phone’s error made of a flight before its doubt was taken (November 2026)', () => {
  it.each([
    ['unstable-and-continued', 83, 'levelled-near-minimums'],
    ['unstable-and-continued', 75, 'chased-glidepath'],
    ['descended-late', 55, 'levelled-near-minimums'],
    ['chased-glidepath', 71, 'descended-late'],
    ['chased-glidepath', 54, 'ducked-below-path'],
    ['rate-not-held', 172, 'chased-glidepath'],
    ['hunting-localizer', 1008, 'drifting'],
  ])('%s %i: no %s', async (flown, seed, told) => {
    const { phone } = await answersTo(flown, seed, ['phone']);
    expect(phone!.faults).not.toContain(told);
  });

  it.each([
    ['missed-sank', 3],
    ['chased-glidepath', 10],
    ['rate-not-held', 1],
    ['short-landing', 1008],
  ])('%s %i is told', async (flown, seed) => {
    const { phone } = await answersTo(flown, seed, ['phone']);
    expect(phone!.faults![0]).toBe(flown);
  });
});
