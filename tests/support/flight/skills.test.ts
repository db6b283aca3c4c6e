import { describe, expect, it } from 'vitest';
import { PETRELHOLM } from '../samples/petrelholm.ts';
import { windFrom } from '../samples/weather.ts';
import { straightInLanding } from '../scenarios/approaches.ts';
import { withSeed } from '../scenarios/scene.ts';
import type { PilotSkill } from './cockpit.ts';
import { fly } from './fly.ts';
import { CHASER, DRIFTER, STUDENT, TIDY } from './skills.ts';

/** Root mean square of both needles from 4.5 NM to minimums, over a few flights in the same rough air. */
function needlesRms(skill: PilotSkill): number {
  const squares = [1, 2, 3].flatMap((seed) => {
    const plan = straightInLanding(PETRELHOLM, { skill, wind: windFrom(110, 14, 'rough') });
    const { beam, columns } = fly(withSeed(plan, seed));
    const onFinal = [...columns.timeS.keys()].filter(
      (i) =>
        beam.distanceToThresholdNm[i]! < 4.5 && columns.indicatedFt[i]! > 240 && columns.onGround[i] === 0,
    );
    return onFinal.map((i) => beam.localizerFullScale[i]! ** 2 + beam.glidepathFullScale[i]! ** 2);
  });
  return Math.sqrt(squares.reduce((sum, v) => sum + v, 0) / squares.length);
}

describe('the pilots', () => {
  it('differ as they should: tidy, then student, then chaser, then drifter', () => {
    const [tidy, student, chaser, drifter] = [TIDY, STUDENT, CHASER, DRIFTER].map(needlesRms);
    expect(tidy).toBeLessThan(0.25);
    expect(student).toBeGreaterThan(tidy!);
    expect(chaser).toBeGreaterThan(student!);
    expect(drifter).toBeGreaterThan(chaser!);
  });
});
