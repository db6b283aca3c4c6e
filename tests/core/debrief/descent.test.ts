import { describe, expect, it } from 'vitest';
import type { ApproachDebrief, DebriefDescent } from '../../../core/debrief/debrief.ts';
import { debriefText } from '../../../core/report/debrief-text.ts';
import { debriefOf } from './drawn.ts';

const descentOf = ({ approaches }: { approaches: readonly ApproachDebrief[] }) =>
  approaches[0]!.measures.descent!;

/** The seconds of all runs, each with its three values. */
const secondsOf = ({ secondBySecond }: DebriefDescent) =>
  secondBySecond.flatMap(({ heldFpm, neededFpm, aboveGlidepathFt }) =>
    heldFpm.map((held, i) => ({
      heldFpm: held,
      neededFpm: neededFpm[i]!,
      aboveGlidepathFt: aboveGlidepathFt[i]!,
    })),
  );

/** The sink held less that needed, summed over the seconds: what it came down towards the path, feet. */
function summedFt(descent: DebriefDescent): number {
  const excess = secondsOf(descent).map(({ heldFpm, neededFpm }) => heldFpm - neededFpm);
  return excess.slice(1).reduce((sum, fpm, i) => sum + (fpm + excess[i]!) / 2 / 60, 0);
}

describe('the descent in a debrief', () => {
  it('on the beam has no excess, though the beam is a straight line over a curved earth', () => {
    const debrief = debriefOf();
    const descent = descentOf(debrief);
    // From 5 NM to decision altitude at 90 kt, 40 s a mile: three minutes less the last half mile or so.
    expect(descent.secondBySecond).toHaveLength(1);
    expect(secondsOf(descent).length).toBeGreaterThan(170);
    expect(secondsOf(descent).length).toBeLessThan(185);
    for (const { heldFpm, neededFpm } of secondsOf(descent))
      expect(Math.abs(heldFpm - neededFpm)).toBeLessThan(2);
    expect(descent).toMatchObject({ stretches: [], steepS: 0 });
    expect(debriefText(debrief)).not.toContain('Descent');
  });

  it('sums up to the change of height above the glidepath, second by second', () => {
    // On the path to 3.5 NM, then high in half a mile, and back to it by 1.5 NM.
    const glidepathFullScale = ({ distanceNm: nm }: { distanceNm: number }) =>
      nm > 3.5 ? 0 : nm > 3 ? (3.5 - nm) * 1.6 : Math.max(0, 0.8 * ((nm - 1.5) / 1.5));
    const debrief = debriefOf({ glidepathFullScale });
    const descent = descentOf(debrief);
    const seconds = secondsOf(descent);
    const changeFt = seconds.at(-1)!.aboveGlidepathFt - seconds[0]!.aboveGlidepathFt;
    expect(descent.changeFt).toBeCloseTo(changeFt, 0);
    expect(Math.abs(summedFt(descent) + changeFt)).toBeLessThan(2);
    const toldFt = descent.stretches.reduce((sum, { gainedFt }) => sum + gainedFt, 0);
    expect(toldFt + descent.restFt).toBeCloseTo(descent.changeFt, 6);
    // Full scale is 0.72°: 0.8 of it at 3 NM is 0.576° of 18,228 ft and 950 ft to the path's origin, 193 ft.
    const [up, down] = descent.stretches;
    expect(Math.abs(up!.gainedFt - 193)).toBeLessThan(12);
    expect(up!.meanExcessFpm).toBeLessThan(0);
    expect(down!.meanExcessFpm).toBeGreaterThan(0);
    const lines = debriefText(debrief)
      .split('\n')
      .filter((line) => /^(\d\d:\d\d:\d\d to .*sinking|Sank )/.test(line));
    expect(lines[0]).toMatch(
      /^\d\d:\d\d:\d\d to \d\d:\d\d:\d\d: from the path to \d+ ft high, sinking \d+ ft\/min less/,
    );
    expect(lines.length).toBeLessThanOrEqual(4);
  });

  it('of a log with a fix every five seconds is not known, with its sentence', () => {
    const { measures } = debriefOf({}, { keep: (tenth) => tenth % 50 === 0 }).approaches[0]!;
    expect(measures.descent).toBeNull();
    expect(measures.unknown['descent']).toMatch(/every 3 s or more often/);
  });

  it('says where it never sank faster than needed for 5 s', () => {
    // 8 ft gained on the path each mile, 12 ft/min at 90 kt; 3° at 50 ft put its origin 954 ft past the threshold.
    const glidepathFullScale = ({ distanceNm: nm }: { distanceNm: number }) =>
      (Math.atan((8 * (8 - nm)) / (nm * 6076.1 + 954)) * 180) / Math.PI / 0.72;
    const descent = descentOf(debriefOf({ glidepathFullScale }));
    expect(Math.abs(descent.meanExcessFpm + 12)).toBeLessThan(2);
    expect(descent.largestDeficit!.fromUtc).toMatch(/Z$/);
    expect(descent.largestExcess).toBeNull();
    expect(descent.unknown).toEqual({ largestExcess: 'It never sank faster than needed for 5 s.' });
  });
});
