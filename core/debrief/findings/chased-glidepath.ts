import { resample, swingsOf, type Swing } from '../../approach/swings.ts';
import type { Polyline } from '../../numeric/polyline.ts';
import { finalOf } from '../../standard/case.ts';
import { listed } from '../../units/listed.ts';
import { needleColumn, needleHalfWidth, over, valueAtMoment, type Asked } from './asked.ts';
import { changeHalfWidthFt, halfScaleFt } from './path-change.ts';
import { threshold, type Evidence, type FindingRule, type Found } from './rule.ts';
import { seconds, sideWords } from './say.ts';

const THRESHOLDS = {
  swing: threshold(
    0.6,
    'of full scale from side to side',
    'half of the tolerance to either side, and through the middle',
  ),
  side: threshold(
    0.25,
    'of full scale on each side',
    'nearer the middle it is a correction that came out right',
  ),
  swings: threshold(2, 'swings on end', 'one is a correction that went too far'),
  third: threshold(
    0.4,
    'of full scale, a third swing on end, where heights leave the middle open',
    'away and back are two, wherever the middle is; less than this is a way back that went too far (ours)',
  ),
};

/** From one side of the path to the other and back. */
export const CHASED_GLIDEPATH: FindingRule = {
  id: 'chased-glidepath',
  kind: 'fault',
  title: 'Chased the glidepath',
  thresholds: THRESHOLDS,
  stoodOff: 'glidepath',
  byHand: true,
  coveredBy: [
    'unstable-and-continued',
    'from-above',
    'descended-early',
    'descended-late',
    'hunting-glidepath',
  ],
  find,
  text: (evidence) =>
    `In ${seconds(evidence['lastsS']!)} you went ${evidence['firstFullScale'] === undefined ? movesWords(evidence) : sidesWords(evidence)}. ` +
    'You held each rate until the needle was on the other side: take half of the correction off while it is still coming in.',
  practise:
    'Name the rate that holds the path, stay within 200 ft/min of it, and go back to it when the needle is half way back. Fly one ' +
    'final calling the vertical speed every ten seconds.',
};

function sidesWords({ firstFullScale, secondFullScale, thirdFullScale }: Evidence): string {
  const sides = [firstFullScale!, secondFullScale!, thirdFullScale!];
  return `through the glidepath and back: ${inTurn(sides, (size, v) => `${size} ${sideWords(v, 'glidepath')}`)}`;
}

function movesWords({ firstMoveFullScale, secondMoveFullScale, thirdMoveFullScale }: Evidence): string {
  const moves = [firstMoveFullScale!, secondMoveFullScale!, thirdMoveFullScale!];
  return `through the glidepath and back: ${inTurn(moves, (size, v) => `${v > 0 ? 'up' : 'down'} ${size}`)}`;
}

/** What each is a fraction of is said once. */
function inTurn(values: readonly number[], words: (size: string, value: number) => string): string {
  const size = (v: number, i: number) => `${Math.abs(v).toFixed(1)}${i === 0 ? ' of full scale' : ''}`;
  return listed(values.map((v, i) => words(size(v, i), v)));
}

function find(asked: Asked): Found | null {
  const final = finalOf(asked.sitting);
  if (final === null) return null;
  for (const part of over(asked, needleColumn(asked, 'glidepath'), final)) {
    const found = acrossIn(asked, part);
    if (found !== null) return found;
  }
  for (const part of over(asked, asked.sitting.flown.deviations.heightAboveGlidepathFt, final)) {
    const found = movedIn(asked, part);
    if (found !== null) return found;
  }
  return null;
}

/** From side to side, each proven. */
function acrossIn(asked: Asked, part: Polyline): Found | null {
  const swings = swingsOf(resample(part, 1), THRESHOLDS.swing.value);
  const i = swings.findIndex((swing, k) =>
    [swing, swings[k + 1]].every((one) => one !== undefined && isAcross(asked, one)),
  );
  if (i === -1) return null;
  const [first, second] = [swings[i]!, swings[i + 1]!];
  const evidence = {
    firstFullScale: first.from,
    secondFullScale: first.to,
    thirdFullScale: second.to,
    lastsS: second.endS - first.startS,
  };
  return { startS: first.startS, endS: second.endS, evidence };
}

function isAcross(asked: Asked, { from, to, startS, endS }: Swing): boolean {
  const surely = (value: number, s: number) => Math.abs(value) - needleHalfWidth(asked, 'glidepath', s);
  return from * to < 0 && Math.min(surely(from, startS), surely(to, endS)) >= THRESHOLDS.side.value;
}

/** Up and down and up, or the other way, by the changes of height alone. */
function movedIn(asked: Asked, part: Polyline): Found | null {
  const swings = swingsOf(movementOf(asked, resample(part, 1)), THRESHOLDS.third.value);
  for (let i = 0; i + 2 < swings.length; i++) {
    const moves = swings.slice(i, i + 3);
    const [first, second, third] = moves.map((swing) => surelyMoved(asked, swing));
    const [outer, other] = [Math.min(first!, third!), Math.max(first!, third!)];
    if (outer < THRESHOLDS.third.value || Math.min(second!, other) < THRESHOLDS.swing.value) continue;
    if (![moves.slice(0, 2), moves.slice(1)].some((two) => two.every((swing) => mayBeAcross(asked, swing))))
      continue;
    const [startS, endS] = [moves[0]!.startS, moves[2]!.endS];
    const [firstMove, secondMove, thirdMove] = moves.map(({ from, to }) => to - from);
    const evidence = {
      firstMoveFullScale: firstMove!,
      secondMoveFullScale: secondMove!,
      thirdMoveFullScale: thirdMove!,
      lastsS: endS - startS,
    };
    return { startS, endS, evidence };
  }
  return null;
}

/** Whether a swing was from side to side with all of the error outward: where the middle is known, that decides. */
function mayBeAcross(asked: Asked, { from, to, startS, endS }: Swing): boolean {
  const side = to > from ? 1 : -1;
  const atMost = (towards: number, s: number) =>
    towards * valueAtMoment(asked, needleColumn(asked, 'glidepath'), s) +
    needleHalfWidth(asked, 'glidepath', s);
  return Math.min(atMost(-side, startS), atMost(side, endS)) >= THRESHOLDS.side.value;
}

/** The needle's movement without its middle, which is off by more the narrower the beam is: feet by the scale there. */
function movementOf(asked: Asked, { timeS, value }: Polyline): Polyline {
  let moved = 0;
  const movement = value.map((ft, i) => {
    if (i > 0) moved += (ft - value[i - 1]!) / (2 * halfScaleFt(asked, timeS[i]!));
    return moved;
  });
  return { timeS, value: movement };
}

/** Fractions of full scale, less what may have departed meanwhile. */
function surelyMoved(asked: Asked, { from, to, startS, endS }: Swing): number {
  const doubtFt = changeHalfWidthFt(asked.sitting.flown, endS, endS - startS);
  return Math.abs(to - from) - doubtFt / (2 * halfScaleFt(asked, endS));
}
