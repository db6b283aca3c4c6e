import { momentOf } from '../../approach/flown-approach.ts';
import type { Polyline } from '../../numeric/polyline.ts';
import { resample } from '../../approach/swings.ts';
import { finalOf } from '../../standard/case.ts';
import { heightFtAt, needleColumn, over, valueAtMoment, type Asked } from './asked.ts';
import { localizerSpells } from './localizer-spells.ts';
import { threshold, type Evidence, type FindingRule, type Found } from './rule.ts';
import { feet, scaleFraction, seconds, sideWords } from './say.ts';
import { whole } from '../../units/whole.ts';

const LARGE = {
  onFinal: threshold(
    10,
    'degrees of track off the course',
    'a cut of more crosses the beam faster than it can be caught (common practice, no source)',
  ),
  low: threshold(
    5,
    'degrees of track off the course',
    'below 1,000 ft the beam is half as wide (common practice, no source)',
  ),
  lowFt: threshold(1000, 'ft above the touchdown zone', 'as the instrument gate'),
  unrest: threshold(1, 'degree more', 'what bumps make of a heading that is held (ours)'),
  lasts: threshold(4, 's', 'shorter is a gust, or a heading passed through (ours)'),
};

/** Cuts back to the course that lead through it. */
export const CORRECTIONS_TOO_LARGE: FindingRule = {
  id: 'corrections-too-large',
  kind: 'fault',
  title: 'Over-corrected the localizer',
  thresholds: LARGE,
  stoodOff: null,
  byHand: true,
  coveredBy: ['unstable-and-continued', 'late-on-localizer', 'hunting-localizer', 'drifting'],
  find: findLarge,
  text: ({ cutDeg, lastsS, heightFt, allowedDeg }) =>
    `At ${feet(heightFt!)} above the touchdown zone you cut back to the localizer by up to ${whole(Math.abs(cutDeg!))} degrees, and by more than ` +
    `${whole(allowedDeg!)} for ${seconds(lastsS!)}. There, ${whole(allowedDeg!)} degrees is the most that you can take out again in time.`,
  practise:
    'Take a heading 5 degrees to either side of the one that holds the course, and fly final on those two alone. Half of that ' +
    'below 1,000 ft.',
};

function findLarge(asked: Asked): Found | null {
  const { sitting } = asked;
  const final = finalOf(sitting);
  const establishedS = momentOf(sitting.approach, 'localizer-established');
  if (final === null || establishedS === null) return null;
  const span = { startS: Math.max(final.startS, establishedS), endS: final.endS };
  const { courseAngleDeg } = sitting.flown;
  const spells = over(asked, courseAngleDeg, span)
    .map(smoothed)
    .flatMap((part) => cutsIn(asked, part));
  const [most] = spells.toSorted(
    (a, b) => Math.abs(b.cutDeg) / b.allowedDeg - Math.abs(a.cutDeg) / a.allowedDeg,
  );
  if (most === undefined) return null;
  const { startS, endS, cutDeg, allowedDeg } = most;
  return {
    startS,
    endS,
    evidence: { cutDeg, lastsS: endS - startS, heightFt: heightFtAt(asked, startS), allowedDeg },
  };
}

interface Cut {
  startS: number;
  endS: number;
  cutDeg: number;
  allowedDeg: number;
}

/** Cuts towards the course that are larger than where they began allows, and for how long they were. */
function cutsIn(asked: Asked, { timeS, value }: Polyline): Cut[] {
  const needle = needleColumn(asked, 'localizer');
  const cuts: Cut[] = [];
  let allowedDeg: number | null = null;
  let cut: Cut | null = null;
  for (let i = 0; i < timeS.length; i++) {
    const s = timeS[i]!;
    const deg = value[i]!;
    // Away from the course it is no correction.
    const isBack = deg * valueAtMoment(asked, needle, s) < 0 && Math.abs(deg) > LARGE.low.value;
    // A cut that began higher up may be taken off below.
    if (!isBack) allowedDeg = null;
    else allowedDeg ??= heightFtAt(asked, s) < LARGE.lowFt.value ? LARGE.low.value : LARGE.onFinal.value;
    const isOver = allowedDeg !== null && Math.abs(deg) > allowedDeg + LARGE.unrest.value;
    if (isOver && cut === null)
      cuts.push((cut = { startS: s, endS: s, cutDeg: deg, allowedDeg: allowedDeg! }));
    else if (isOver) {
      cut!.endS = s;
      if (Math.abs(deg) > Math.abs(cut!.cutDeg)) cut!.cutDeg = deg;
    } else cut = null;
  }
  return cuts.filter(({ startS, endS }) => endS - startS >= LARGE.lasts.value);
}

/** Every second, each the mean of three. */
function smoothed(part: Polyline): Polyline {
  const { timeS, value } = resample(part, 1);
  const mean = value.map((v, i) => ((value[i - 1] ?? v) + v + (value[i + 1] ?? v)) / 3);
  return { timeS, value: mean };
}

const LATE = {
  leaving: threshold(0.25, 'of full scale', 'where a correction is due (design, section 8)'),
  delay: threshold(12, 's', 'a look and a turn take 5 or 6, and twice that is late (ours)'),
};

/** Watched the needle go. */
export const CORRECTIONS_TOO_LATE: FindingRule = {
  id: 'corrections-too-late',
  kind: 'fault',
  title: 'Corrected the localizer late',
  thresholds: LATE,
  stoodOff: 'localizer',
  byHand: true,
  coveredBy: [
    'unstable-and-continued',
    'late-on-localizer',
    'hunting-localizer',
    'drifting',
    'corrections-too-few',
  ],
  find: findLate,
  text: (evidence) => `${lateWords(evidence)} A small correction at a quarter would have been enough.`,
  practise:
    'Call the needle aloud at every look, "a quarter left, correcting", and turn before the next look. Ten minutes on a localizer are ' +
    'enough to get the rhythm.',
};

function lateWords({ delayS, turned, turnedFullScale, peakFullScale }: Evidence): string {
  const side = sideWords(peakFullScale!, 'localizer');
  const peak = scaleFraction(peakFullScale!);
  if (turned === 0)
    return `The needle passed a quarter of full scale and stayed beyond it for ${seconds(delayS!)}, to ${peak} ${side}, and no turn back was seen.`;
  const then = scaleFraction(turnedFullScale!);
  const wentOn = then === peak ? '' : `, and it went on to ${peak}`;
  return `The needle passed a quarter of full scale, and it was ${seconds(delayS!)} before you turned; by then you were ${then} ${side}${wentOn}.`;
}

function findLate(asked: Asked): Found | null {
  const { corrections } = asked.measures;
  if (corrections === null) return null;
  for (const spell of localizerSpells(asked, LATE.leaving.value)) {
    const delay = corrections.delays.find(({ leftS }) => leftS >= spell.startS - 1 && leftS <= spell.endS);
    if (delay === undefined) continue;
    const spellS = spell.endS - delay.leftS;
    // A turn that came when the needle was back already turned nothing back.
    const isTurned = delay.delayS !== null && delay.delayS <= spellS;
    const delayS = isTurned ? delay.delayS : spellS;
    if (delayS < LATE.delay.value) continue;
    return {
      startS: spell.startS,
      endS: spell.endS,
      evidence: {
        delayS,
        turned: isTurned ? 1 : 0,
        turnedFullScale: valueAtMoment(asked, needleColumn(asked, 'localizer'), delay.leftS + delayS),
        peakFullScale: spell.peakFullScale,
      },
    };
  }
  return null;
}

const FEW = {
  beyond: threshold(
    0.4,
    'of full scale',
    'well beyond where a correction is due, and still within any tolerance',
  ),
  lasts: threshold(45, 's', 'time for three corrections (ours)'),
  moved: threshold(0.15, 'of full scale in that time', 'more and something was done about it'),
};

/** Let the needle stand. */
export const CORRECTIONS_TOO_FEW: FindingRule = {
  id: 'corrections-too-few',
  kind: 'fault',
  title: 'Sat off the localizer',
  thresholds: FEW,
  stoodOff: 'localizer',
  byHand: true,
  coveredBy: ['unstable-and-continued', 'late-on-localizer', 'drifting'],
  find: findFew,
  text: ({ meanFullScale, lastsS }) =>
    `For ${seconds(lastsS!)} you stayed ${scaleFraction(meanFullScale!)} ${sideWords(meanFullScale!, 'localizer')}. Parallel to the course is ` +
    'not on it: turn five degrees towards it, and take half of that off as the needle comes in.',
  practise:
    'Never leave the needle off to one side for three looks: each time it has not moved, turn 5 degrees. Fly one final with your ' +
    'instructor asking "and now?" every ten seconds.',
};

function findFew(asked: Asked): Found | null {
  const column = needleColumn(asked, 'localizer');
  for (const spell of localizerSpells(asked, FEW.beyond.value))
    for (const { timeS, value } of over(asked, column, spell).map((part) => resample(part, 1))) {
      const stood = longestStanding(value);
      if (stood === null) continue;
      const [startS, endS] = [timeS[stood.first]!, timeS[stood.last]!];
      const within = value.subarray(stood.first, stood.last + 1);
      const meanFullScale = within.reduce((sum, v) => sum + v, 0) / within.length;
      return { startS, endS, evidence: { meanFullScale, lastsS: endS - startS } };
    }
  return null;
}

/** The longest run of seconds in which a needle hardly moved, if it is long enough. */
function longestStanding(value: Float64Array): { first: number; last: number } | null {
  let longest: { first: number; last: number } | null = null;
  let first = 0;
  for (let last = 0; last < value.length; last++) {
    while (rangeOf(value, first, last) > FEW.moved.value) first++;
    if (last - first >= Math.max(FEW.lasts.value, longest === null ? 0 : longest.last - longest.first + 1))
      longest = { first, last };
  }
  return longest;
}

function rangeOf(value: Float64Array, first: number, last: number): number {
  const within = value.subarray(first, last + 1);
  return Math.max(...within) - Math.min(...within);
}
