import { describe, expect, it } from 'vitest';
import type { ApproachDebrief } from '../../../core/debrief/debrief.ts';
import type { FlightTruth } from '../../support/flight/flight-truth.ts';
import { fly } from '../../support/flight/fly.ts';
import { CHASER } from '../../support/flight/skills.ts';
import { PETRELHOLM } from '../../support/samples/petrelholm.ts';
import { windFrom } from '../../support/samples/weather.ts';
import { straightInLanding } from '../../support/scenarios/approaches.ts';
import { withSeed, type SceneSettings } from '../../support/scenarios/scene.ts';
import { debriefTruth } from '../debrief/drawn.ts';

/** A straight-in landing to runway 07 with a smooth wind of up to 8 kt, by a tidy pilot unless said. */
function flownIn(fromTrueDeg: number, speedKt: number, settings: SceneSettings = {}) {
  const plan = straightInLanding(PETRELHOLM, { wind: windFrom(fromTrueDeg, speedKt, 'smooth'), ...settings });
  const truth = fly(withSeed(plan, 2));
  const [approach] = debriefTruth(truth).approaches;
  return { truth, approach: approach!, final: finalOf(approach!) };
}

const finalOf = ({ segments }: ApproachDebrief) => segments.find(({ kind }) => kind === 'final')!;

function meanGroundspeedKt(
  { columns }: FlightTruth,
  { startUtc, endUtc }: ReturnType<typeof finalOf>,
): number {
  const [fromS, toS] = [Date.parse(startUtc) / 1000, Date.parse(endUtc) / 1000];
  const onFinal = columns.groundspeedKt.filter(
    (_, i) => columns.timeS[i]! >= fromS && columns.timeS[i]! <= toS,
  );
  return onFinal.reduce((sum, kt) => sum + kt, 0) / onFinal.length;
}

const LIGHT_WINDS = [
  ['ahead', 70, 8],
  ['ahead and right', 110, 5],
  ['ahead and left', 40, 5],
  ['the right', 160, 5],
  ['the left', 340, 5],
  ['behind', 250, 4],
] as const;

/** Rules that instructors teach [common practice, no source]: what they say must come out of what is measured. */
describe.each(LIGHT_WINDS)('a tidy approach in a light wind from %s', (_name, fromTrueDeg, speedKt) => {
  const { truth, approach, final } = flownIn(fromTrueDeg, speedKt);

  it('descends at five times its groundspeed, within 8 %', () => {
    const { heldFpm, neededFpm } = approach.measures.sinkOnFinal!;
    const ruleFpm = 5 * meanGroundspeedKt(truth, final);
    expect(heldFpm / ruleFpm).toBeGreaterThan(1);
    expect(heldFpm / ruleFpm).toBeLessThan(1.08);
    // A tidy pilot holds what is needed nearer than the rule says it.
    expect(Math.abs(heldFpm / neededFpm - 1)).toBeLessThan(0.02);
  });

  it('holds the localizer within a quarter scale by corrections of about 3°', () => {
    expect(final.localizer!.maxAbsFullScale).toBeLessThan(0.25);
    expect(final.localizer!.insideShare!.quarter).toBe(1);
    const { count, meanDeg } = approach.measures.correctionsOnFinal!;
    expect(count).toBeGreaterThan(0);
    expect(meanDeg).toBeGreaterThanOrEqual(2);
    expect(meanDeg).toBeLessThanOrEqual(4);
  });
});

describe('a pilot who chases the needle', () => {
  it('in a light wind takes corrections of more than the 3° that would do, and more of them', () => {
    const tidy = flownIn(110, 5).approach.measures.correctionsOnFinal!;
    const chased = flownIn(110, 5, { skill: CHASER }).approach.measures.correctionsOnFinal!;
    expect(chased.meanDeg).toBeGreaterThan(4);
    expect(chased.count).toBeGreaterThan(tidy.count);
  });
});
