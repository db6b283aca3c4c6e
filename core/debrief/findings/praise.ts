import { momentOf } from '../../approach/flown-approach.ts';
import type { Span } from '../../numeric/polyline.ts';
import type { ApproachJudgement } from '../../standard/judgement.ts';
import {
  farthestOver,
  criterionOf,
  needleColumn,
  needleHalfWidth,
  type Asked,
  type Needle,
} from './asked.ts';
import { threshold, type Evidence, type FindingRule, type Found } from './rule.ts';
import { scaleFraction, seconds } from './say.ts';
import { MISSED_LATE } from './missed-approach.ts';
import { UNSTABLE_AND_CONTINUED } from './unstable-and-continued.ts';

const praise = { kind: 'praise', practise: null, stoodOff: null, byHand: false } as const;

const SOUND = {
  within: threshold(
    10,
    's of an item going outside',
    'the rule for a sound decision (design, section 11), or above 300 ft after a failed gate',
  ),
};

/** Faults that the decision came too late for, whenever they were. */
const TOO_LATE = [UNSTABLE_AND_CONTINUED, MISSED_LATE];

/** Away while there was still time. */
export const WENT_AROUND_IN_TIME: FindingRule = {
  ...praise,
  id: 'went-around-in-time',
  title: 'Went around in good time',
  thresholds: SOUND,
  coveredBy: [],
  find: (asked) => {
    const { sitting, judgement } = asked;
    const startS = momentOf(sitting.approach, 'missed-approach-start');
    if (startS === null || judgement.soundGoAround === null || !isProven(judgement)) return null;
    // What was continued too long before is not made good by it.
    if (TOO_LATE.some((rule) => rule.find(asked) !== null)) return null;
    return { startS, endS: startS, evidence: {} };
  },
  text: () =>
    'It was no longer stable, and you went around instead of trying to save it. That was the right decision.',
};

/** Whether something of final was outside, however far off the log may be. */
function isProven({ criteria, gates }: ApproachJudgement): boolean {
  const timed = criteria.filter(({ id }) => !id.endsWith('-before-final'));
  return (
    timed.some(({ outsideRangeS }) => (outsideRangeS?.atLeast ?? 0) > 0) ||
    gates.some(
      ({ verdict, lostAfter }) => verdict === 'not-met' || lostAfter.some(({ isProven: sure }) => sure),
    )
  );
}

const STEADY = {
  within: threshold(
    0.5,
    'of full scale, with all of its error',
    'half of what is tolerated and more (design, section 11: well inside)',
  ),
};

/** Where the needle's criterion counted, if it stayed within half scale for sure. */
function steady(asked: Asked, needle: Needle): (Span & { farthestFullScale: number }) | null {
  const criterion = criterionOf(asked, `${needle}-final`);
  if (criterion?.verdict !== 'met' || criterion.excursions.length > 0 || criterion.counted.length === 0)
    return null;
  const span = { startS: criterion.counted[0]!.startS, endS: criterion.counted.at(-1)!.endS };
  const column = needleColumn(asked, needle);
  let farthestFullScale = 0;
  for (const side of [1, -1] as const) {
    const found = farthestOver(asked, column, span, side);
    if (found === null) return null;
    const size = side * found.value;
    if (size + needleHalfWidth(asked, needle, found.s) > STEADY.within.value) return null;
    farthestFullScale = Math.max(farthestFullScale, size);
  }
  return { ...span, farthestFullScale };
}

const LOCALIZER_FAULTS = [
  'unstable-and-continued',
  'late-on-localizer',
  'hunting-localizer',
  'drifting',
  'corrections-too-large',
  'corrections-too-late',
  'corrections-too-few',
];
const GLIDEPATH_FAULTS = [
  'unstable-and-continued',
  'ducked-below-path',
  'levelled-near-minimums',
  'from-above',
  'descended-late',
  'descended-early',
  'hunting-glidepath',
  'chased-glidepath',
  'rate-not-held',
  'speed-decaying',
];

const words = ({ farthestFullScale, lastsS }: Evidence) =>
  `never more than ${scaleFraction(farthestFullScale!)} off in ${seconds(lastsS!)}`;

/** Both needles. */
export const STEADY_BOTH: FindingRule = {
  ...praise,
  id: 'steady',
  title: 'Steady on both needles',
  thresholds: STEADY,
  coveredBy: [...LOCALIZER_FAULTS, ...GLIDEPATH_FAULTS],
  find: (asked) => {
    const [localizer, glidepath] = [steady(asked, 'localizer'), steady(asked, 'glidepath')];
    if (localizer === null || glidepath === null) return null;
    const span = {
      startS: Math.max(localizer.startS, glidepath.startS),
      endS: Math.min(localizer.endS, glidepath.endS),
    };
    const farthestFullScale = Math.max(localizer.farthestFullScale, glidepath.farthestFullScale);
    return { ...span, evidence: { farthestFullScale, lastsS: span.endS - span.startS } };
  },
  text: (evidence) =>
    `Both needles stayed near the middle down final, ${words(evidence)}. Well flown: keep that scan.`,
};

function steadyOn(needle: Needle, coveredBy: readonly string[]): FindingRule {
  return {
    ...praise,
    id: `steady-${needle}`,
    title: `Steady on the ${needle}`,
    thresholds: STEADY,
    coveredBy: ['steady', ...coveredBy],
    find: (asked): Found | null => {
      const found = steady(asked, needle);
      if (found === null) return null;
      const { startS, endS, farthestFullScale } = found;
      return { startS, endS, evidence: { farthestFullScale, lastsS: endS - startS } };
    },
    text: (evidence) => `You held the ${needle} well down final, ${words(evidence)}.`,
  };
}

export const STEADY_LOCALIZER: FindingRule = steadyOn('localizer', LOCALIZER_FAULTS);
export const STEADY_GLIDEPATH: FindingRule = steadyOn('glidepath', GLIDEPATH_FAULTS);
