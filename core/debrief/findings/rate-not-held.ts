import type { Descent } from '../../approach/descent.ts';
import { needleColumn, distanceNmAt, valueAtMoment, type Asked } from './asked.ts';
import { threshold, type FindingRule, type Found } from './rule.ts';
import { feet, miles, seconds } from './say.ts';
import { endedBy, finalOf, type Case } from '../../standard/case.ts';
import { whole } from '../../units/whole.ts';

const THRESHOLDS = {
  moved: threshold(80, 'ft away from the path', 'about half a scale at 2 NM; less is a correction (ours)'),
  excess: threshold(
    100,
    'ft/min from the needed rate',
    'less is within what a vertical speed is read to (common practice, no source)',
  ),
  lasts: threshold(10, 's', 'shorter is a gust (ours)'),
  pause: threshold(15, 's between two stretches the same way', 'a correction takes longer to show (ours)'),
  bySpeed: threshold(
    8,
    'kt of groundspeed',
    'changes the needed rate by 40 ft/min: then it is the speed that was not allowed for',
  ),
};

/** Under it nobody reads a vertical speed as a climb or a descent (common practice, no source). */
const LEVEL_FPM = 50;

/** Away from the path by a rate that was not the one needed. */
export const RATE_NOT_HELD: FindingRule = {
  id: 'rate-not-held',
  kind: 'fault',
  title: 'Did not hold the rate that the path needed',
  thresholds: THRESHOLDS,
  stoodOff: 'glidepath',
  byHand: true,
  coveredBy: [
    'unstable-and-continued',
    'ducked-below-path',
    'missed-sank',
    'missed-late',
    'levelled-near-minimums',
    'from-above',
    'descended-late',
    'descended-early',
    'hunting-glidepath',
    'chased-glidepath',
  ],
  find,
  text: ({ heldFpm, neededFpm, lastsS, toFt, groundspeedChangeKt, distanceNm }) =>
    `From ${miles(distanceNm!)} out you ${heldWords(heldFpm!)} for ${seconds(lastsS!)} where the path needed ${whole(neededFpm!)} ft/min, and went to ` +
    `${feet(toFt!)} ${toFt! > 0 ? 'high' : 'low'}. ${causeWords(groundspeedChangeKt!, heldFpm!, neededFpm!)}`,
  practise:
    'Work out the rate for your groundspeed before the fix (on a 3 degree path five times the knots), set it, and check the vertical ' +
    'speed every ten seconds. When the groundspeed changes by 10 kt, change the rate by 50 ft/min. While flaps, gear or power change, ' +
    'hold the attitude and trim before you look away.',
};

/** A rate as it was flown: near none it is level flight, and up it is no sink. */
function heldWords(heldFpm: number): string {
  if (Math.abs(heldFpm) < LEVEL_FPM) return 'stayed level';
  return heldFpm > 0 ? `sank ${whole(heldFpm)} ft/min` : `climbed ${whole(-heldFpm)} ft/min`;
}

function causeWords(changeKt: number, heldFpm: number, neededFpm: number): string {
  if (heldFpm <= -LEVEL_FPM)
    return 'A climb is the attitude: hold it, whatever flaps, gear and power do to it.';
  const isTooSlow = heldFpm < neededFpm;
  const isSpeed = isTooSlow ? changeKt >= THRESHOLDS.bySpeed.value : changeKt <= -THRESHOLDS.bySpeed.value;
  if (!isSpeed) return 'Set the rate for your groundspeed, and correct it before the needle has moved far.';
  const [more, asks] = isTooSlow ? ['faster', 'a higher'] : ['slower', 'a lower'];
  return `Your groundspeed had become ${whole(Math.abs(changeKt))} kt ${more}, which needs ${asks} rate.`;
}

type Stretch = Pick<Descent['stretches'][number], 'startS' | 'endS' | 'fromFt' | 'toFt'>;

/** Stretches that lead the same way are one departure, at whatever rates, and whatever a gust was between them. */
function joined(stretches: readonly Stretch[]): Stretch[] {
  const found: Stretch[] = [];
  for (const next of stretches) {
    const before = found.at(-1);
    const goesOn =
      before !== undefined &&
      next.startS - before.endS < THRESHOLDS.pause.value &&
      (next.toFt - next.fromFt) * (before.toFt - before.fromFt) > 0;
    if (goesOn) found[found.length - 1] = { ...next, startS: before.startS, fromFt: before.fromFt };
    else found.push(next);
  }
  return found;
}

/** Whether final was left soon after for a circle, or another runway: its altitude is held until then. */
function isLeaving(sitting: Case, s: number): boolean {
  const final = finalOf(sitting);
  return final !== null && endedBy(sitting) === 'leaving' && s > final.endS - THRESHOLDS.pause.value;
}

function find(asked: Asked): Found | null {
  const { measures, sitting } = asked;
  const away = joined(measures.descent?.stretches ?? []).filter(
    ({ fromFt, toFt, startS, endS }) =>
      !(toFt > fromFt && isLeaving(sitting, endS)) &&
      Math.abs(toFt) > Math.abs(fromFt) &&
      Math.abs(toFt - fromFt) >= THRESHOLDS.moved.value &&
      (60 * Math.abs(toFt - fromFt)) / (endS - startS) >= THRESHOLDS.excess.value &&
      endS - startS >= THRESHOLDS.lasts.value &&
      Math.abs(valueAtMoment(asked, needleColumn(asked, 'glidepath'), endS)) > 0.5,
  );
  const [most] = away.toSorted((a, b) => Math.abs(b.toFt) - Math.abs(a.toFt));
  if (most === undefined) return null;
  const { startS, endS, fromFt, toFt } = most;
  const within = measures.descent!.runs.flat().filter(({ timeS }) => timeS >= startS && timeS <= endS);
  const neededFpm = within.reduce((sum, second) => sum + second.neededFpm, 0) / within.length;
  const lastsS = endS - startS;
  const { groundspeedKt } = sitting.flown.track;
  const evidence = {
    // By the feet that it departed, as the account of the descent says it: the fits reach beyond both ends.
    heldFpm: neededFpm - (60 * (toFt - fromFt)) / lastsS,
    neededFpm,
    lastsS,
    toFt,
    groundspeedChangeKt:
      valueAtMoment(asked, groundspeedKt, endS) - valueAtMoment(asked, groundspeedKt, startS),
    distanceNm: distanceNmAt(asked, startS),
  };
  return { startS, endS, evidence };
}
