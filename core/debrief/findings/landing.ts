import { momentOf } from '../../approach/flown-approach.ts';
import { RADIANS_PER_DEGREE } from '../../units/units.ts';
import { whole } from '../../units/whole.ts';
import type { Asked } from './asked.ts';
import { threshold, type FindingRule, type Found } from './rule.ts';

/** A touchdown is told no nearer than this, as where it is measured. */
const STEP_FT = 50;

const ERROR = threshold(
  200,
  'ft',
  'how far from the wheels a touchdown is found where nothing floats, on 26 tidy landings by panel and phone (measured); a float makes it nearer',
);

const LONG = {
  zone: threshold(
    3000,
    'ft past the threshold, or half of a shorter runway',
    'the touchdown zone (FAA AC 91-79B, from memory); the half is ours',
  ),
  error: ERROR,
};

/** Beyond the touchdown zone. */
export const LONG_LANDING: FindingRule = {
  id: 'long-landing',
  kind: 'fault',
  title: 'Landed long',
  thresholds: LONG,
  stoodOff: null,
  byHand: false,
  coveredBy: [],
  find: (asked) => {
    const { lengthFt } = asked.sitting.flown.facility;
    const zoneFt = Math.min(LONG.zone.value, lengthFt / 2);
    return landed(asked, (pastFt) => pastFt - ERROR.value > zoneFt);
  },
  text: ({ pastFt, leftFt }) =>
    `You touched down about ${toStep(pastFt!)} past the threshold, with about ${toStep(leftFt!)} of runway left. If it floats past the ` +
    'touchdown zone, go around.',
  practise:
    'On final say where you will touch down, and where you will go around if you have not. Cross the threshold at landing speed. ' +
    'Five landings.',
};

const SHORT = {
  from: threshold(
    500,
    'ft past the threshold',
    'half of the way to where a path over the threshold at 50 ft leads (ours)',
  ),
  error: ERROR,
};

/** Hardly past the threshold. */
export const SHORT_LANDING: FindingRule = {
  id: 'short-landing',
  kind: 'fault',
  title: 'Touched down close to the threshold',
  thresholds: SHORT,
  stoodOff: null,
  byHand: false,
  coveredBy: ['ducked-below-path'],
  find: (asked) => landed(asked, (pastFt) => pastFt + ERROR.value < SHORT.from.value),
  text: ({ pastFt, pathFt }) =>
    `You touched down about ${toStep(pastFt!)} past the threshold; the glidepath leads about ${toStep(pathFt!)} in. One gust there, and you are in the ` +
    'lights before the runway.',
  practise:
    'Keep the aiming point still in the windscreen until the flare, and keep power on until the threshold has passed beneath you. ' +
    'Five landings on the aiming marks, none before them.',
};

function landed({ sitting, measures }: Asked, is: (pastFt: number) => boolean): Found | null {
  const touchdownS = momentOf(sitting.approach, 'touchdown');
  const pastFt = measures.touchdownDistanceFt;
  if (touchdownS === null || pastFt === null || !is(pastFt)) return null;
  const { lengthFt, thresholdCrossingHeightFt, glidepathAngleDeg } = sitting.flown.facility;
  const pathFt = thresholdCrossingHeightFt / Math.tan(glidepathAngleDeg * RADIANS_PER_DEGREE);
  const evidence = { pastFt, leftFt: lengthFt - pastFt, pathFt };
  return { startS: touchdownS, endS: touchdownS, evidence };
}

function toStep(ft: number): string {
  return `${whole(Math.round(ft / STEP_FT) * STEP_FT)} ft`;
}
