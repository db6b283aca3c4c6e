import { describe, expect, it } from 'vitest';
import { compareNeedle } from '../../../core/approach/recorded-needles.ts';
import { makeFlown, type Making } from './make-flown.ts';

const WHOLE = { startS: 0, endS: 100 };
/** A slow swing to half scale either side, twice in 100 s. */
const swing = (s: number) => 0.5 * Math.sin((2 * Math.PI * s) / 50);

const compared = (recorded: number | ((s: number) => number), making: Making = {}, span = WHOLE) =>
  compareNeedle(
    makeFlown({ localizer: swing, recorded: { localizerRecordedFullScale: recorded }, ...making }),
    'localizer',
    span,
  );

describe('a recorded needle', () => {
  it('that shows what is computed agrees, without any difference', () => {
    const found = compared(swing)!;
    expect(found).toMatchObject({ comparedS: 100, turned: false, agrees: true });
    expect(found.bias).toBeCloseTo(0, 12);
    expect(found.rms).toBeCloseTo(0, 7);
    expect(found.correlation).toBeCloseTo(1, 9);
    expect(found.gain).toBeCloseTo(1, 9);
  });

  it('with a needle’s own sense is turned, and said to be', () => {
    const found = compared((s) => -swing(s))!;
    expect(found).toMatchObject({ turned: true, agrees: true });
    expect(found.rms).toBeCloseTo(0, 7);
    expect(found.correlation).toBeCloseTo(1, 9);
  });

  it('is given over the computed one, turned, once a second', () => {
    const tenths = Array.from({ length: 1001 }, (_, tenth) => tenth / 10);
    const { overlay } = compared((s) => -swing(s) - 0.1, { timeS: tenths }, { startS: 20, endS: 60 })!;
    expect(overlay).toHaveLength(41);
    for (const [k, { timeS, computed, recorded }] of overlay.entries()) {
      expect(timeS).toBeCloseTo(20 + k, 9);
      expect(computed).toBeCloseTo(swing(timeS), 9);
      expect(recorded).toBeCloseTo(swing(timeS) + 0.1, 9);
    }
  });

  it('off to one side has that as its bias, in the sense of the computed one', () => {
    expect(compared((s) => swing(s) + 0.1)!.bias).toBeCloseTo(0.1, 9);
    expect(compared((s) => -swing(s) - 0.1)!.bias).toBeCloseTo(0.1, 9);
  });

  it.each([
    [0.24, true],
    [0.26, false],
  ])('%d of full scale to one side all along: agrees is %s', (offset, agrees) => {
    expect(compared((s) => swing(s) + offset)!.agrees).toBe(agrees);
  });

  it('of a course half as wide moves twice as much, and does not agree', () => {
    // RMS of the difference is that of the swing itself, 0.5 / √2: by hand.
    const found = compared((s) => 2 * swing(s))!;
    expect(found.gain).toBeCloseTo(2, 2);
    expect(compared((s) => 1.9 * swing(s), { localizer: (s) => swing(s) * 0.95 })!.gain).toBeCloseTo(2, 1);
  });

  it('that swings on its own does not agree', () => {
    const other = compared((s) => 0.9 * Math.cos((2 * Math.PI * s) / 50))!;
    expect(other.agrees).toBe(false);
    expect(Math.abs(other.correlation!)).toBeLessThan(0.1);
  });

  it('has no correlation where it, or the computed one, hardly moved', () => {
    expect(compared(0.01)).toMatchObject({ correlation: null });
    expect(compared(0.01, { localizer: 0.02 })).toMatchObject({
      correlation: null,
      gain: null,
      agrees: true,
    });
  });

  it('is compared only where both are on their scale', () => {
    // At its stop for 40 of the seconds, and beyond the computed scale for 20 of the others.
    const found = compared((s) => (s > 60 ? 1 : swing(s)), { localizer: (s) => (s <= 20 ? 1.5 : swing(s)) })!;
    expect(found).toMatchObject({ comparedS: 40, agrees: true });
  });

  it('is not compared over a gap, beyond the span, or for less than 30 s', () => {
    const timeS = [...Array(41).keys(), ...Array.from({ length: 20 }, (_, k) => 60 + k)];
    expect(compared(swing, { timeS })!.comparedS).toBe(59);
    expect(compared(swing, {}, { startS: 10, endS: 60 })!.comparedS).toBe(50);
    expect(compared(swing, {}, { startS: 0, endS: 30 })).not.toBeNull();
    expect(compared(swing, {}, { startS: 0, endS: 29 })).toBeNull();
    expect(compared((s) => (s > 20 ? NaN : swing(s)))).toBeNull();
  });

  it('is none in a log without it', () => {
    expect(compareNeedle(makeFlown(), 'localizer', WHOLE)).toBeNull();
  });

  it('of the glidepath is held against the glidepath', () => {
    const flown = makeFlown({
      glidepath: swing,
      localizer: 0,
      recorded: { glidepathRecordedFullScale: (s) => -swing(s) },
    });
    expect(compareNeedle(flown, 'glidepath', WHOLE)).toMatchObject({ turned: true, agrees: true });
  });
});
