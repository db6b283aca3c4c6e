import { airspeedOf } from '../../standard/airspeed.ts';
import { speedTarget } from '../../standard/speed-target.ts';
import { distanceNmAt, farthestOver, valueAtMoment, type Asked } from './asked.ts';
import { threshold, type FindingRule, type Found } from './rule.ts';
import { feet, miles } from './say.ts';
import { whole } from '../../units/whole.ts';

const DECAYING = {
  fell: threshold(8, 'kt', 'beyond a gust and an unsteady hand (ours)'),
  below: threshold(5, 'kt below the target, where one was stated', 'slowing down to the target is no fault'),
  regained: threshold(40, 'ft towards the path', 'about half a dot at 4 NM (ours)'),
};

/** Back up to the path without power. */
export const SPEED_DECAYING: FindingRule = {
  id: 'speed-decaying',
  kind: 'fault',
  title: 'Let the speed decay on the way back to the glidepath',
  thresholds: DECAYING,
  stoodOff: 'glidepath',
  byHand: true,
  coveredBy: [],
  find: findDecay,
  text: ({ fromKt, toKt, lowFt, distanceNm }) =>
    `You were ${feet(lowFt!)} low ${miles(distanceNm!)} out, and on the way back up to the glidepath the speed fell from ${whole(fromKt!)} to ${whole(toKt!)} kt. ` +
    'When low, add power: with pitch alone you pay in speed.',
  practise:
    'From a quarter of full scale low: power first, then pitch to hold the speed within 3 kt until the needle is back. Six times, ' +
    'calling the speed at each look.',
};

function findDecay(asked: Asked): Found | null {
  const { sitting, measures } = asked;
  const { airspeedIndicatedKt } = sitting.flown.track.recorded;
  if (!airspeedIndicatedKt) return null;
  const target = speedTarget(sitting.standard.final.speedBasis, sitting.stated);
  for (const { startS, endS, fromFt, gainedFt } of measures.descent?.stretches ?? []) {
    if (gainedFt < DECAYING.regained.value || fromFt > -DECAYING.regained.value) continue;
    const fromKt = valueAtMoment(asked, airspeedIndicatedKt, startS);
    const toKt = farthestOver(asked, airspeedIndicatedKt, { startS, endS }, -1)?.value ?? NaN;
    const isBelow = 'why' in target || toKt <= target.kt - DECAYING.below.value;
    if (!(fromKt - toKt >= DECAYING.fell.value) || !isBelow) continue;
    return {
      startS,
      endS,
      evidence: { fromKt, toKt, lowFt: fromFt, distanceNm: distanceNmAt(asked, startS) },
    };
  }
  return null;
}

const FAST = {
  over: threshold(
    10,
    'kt over the target, or as the standard has it',
    "the standard's own limit at its gate (its verdict, proven)",
  ),
};

/** Fast at a gate. */
export const FAST_AT_GATE: FindingRule = {
  id: 'fast-at-gate',
  kind: 'fault',
  title: 'Fast at the gate',
  thresholds: FAST,
  stoodOff: null,
  byHand: false,
  coveredBy: ['unstable-and-continued'],
  find: findFast,
  text: ({ offKt, speedKt, gateFt }) =>
    `You passed ${whole(gateFt!)} ft at ${whole(speedKt!)} kt, ${whole(offKt!)} kt above your target of ${whole(speedKt! - offKt!)}. Speed that you carry through the gate ` +
    'is still there at the flare.',
  practise:
    'Have approach speed and flaps set a mile before the fix, and call speed and target aloud at 1,000 and 500 ft.',
};

function findFast({ sitting, judgement }: Asked): Found | null {
  const target = speedTarget(sitting.standard.gates.speedBasis, sitting.stated);
  if ('why' in target || 'why' in airspeedOf(sitting)) return null;
  const lastS = Math.max(...judgement.gates.map(({ timeS }) => timeS ?? -Infinity));
  for (const { items, timeS, heightFt } of judgement.gates) {
    const speed = items.find(({ item }) => item === 'airspeed');
    if (timeS === null || speed?.verdict !== 'not-met' || speed.measured! < 0) continue;
    const offKt = speed.measured!;
    return { startS: timeS, endS: lastS, evidence: { offKt, speedKt: target.kt + offKt, gateFt: heightFt } };
  }
  return null;
}
