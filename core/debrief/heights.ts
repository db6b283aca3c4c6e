import { findApproaches, type FoundApproaches } from '../approach/find-approaches.ts';
import { flownAt, type Flown } from '../approach/flown.ts';
import { OFF_HEIGHT_FT, rolloutOf } from '../approach/rollout.ts';
import { projectTrack } from '../deviation/project-track.ts';
import { issue, type Issue } from '../issue/issue.ts';
import { median } from '../numeric/median.ts';
import { firstAtOrAfter } from '../numeric/polyline.ts';
import { calibrated, contradicted, isBySatellite, rollErrorFt } from '../track/position-error.ts';

/** Whether heights are taken as they were logged, or as a roll after a landing shows them to be. */
export type Heights = 'as-logged' | 'from-rollout';

interface WithHeights {
  /** Its heights corrected, where they are. */
  readonly flown: Flown;
  readonly found: FoundApproaches;
  readonly issues: readonly Issue[];
}

/**
 * Finds the approaches of a flight, its heights corrected by what its rolls show: the middle of all of them. That is
 * done where it is asked for, and of itself to a phone's heights that say nothing of how good they are, or say what
 * the roll contradicts. Other heights that it contradicts are taken to be as far off as it shows. The indicated
 * altitude is never touched.
 */
export function withHeights(flown: Flown, gateDatumFt: number, asked: Heights | null): WithHeights {
  const found = findApproaches(flown, gateDatumFt);
  const asLogged = (...issues: Issue[]) => ({ flown, found, issues });
  const { track, error } = flown;
  if (!isBySatellite(track)) return asked === 'from-rollout' ? asLogged(NOT_BY_SATELLITE) : asLogged();
  const rolls = rollsOf(flown, found);
  const isOff = rolls !== null && isContradicted(flown, rolls);
  const isPhone = track.receiver.kind === 'phone';
  const ofItself = isPhone && (error.heightFrom === 'class' || isOff) ? 'from-rollout' : 'as-logged';
  const heights = asked ?? ofItself;
  if (rolls === null) {
    const isSilent = heights === 'as-logged' || (asked === null && found.approaches.length === 0);
    return isSilent ? asLogged() : asLogged(NO_ROLL);
  }
  // So far off, it is the facility or the column that is wrong, and correcting would hide it.
  const isTooFar = Math.abs(rolls.biasFt) > OFF_HEIGHT_FT;
  if (heights === 'from-rollout' && !isTooFar) return corrected(flown, gateDatumFt, rolls);
  const issues = heights === 'from-rollout' ? [TOO_FAR_OFF] : isOff ? [notTaken(rolls.biasFt)] : [];
  if (!isOff) return asLogged(...issues);
  const { heightCorrectionFt, antennaHeightFt } = flown;
  const known = { error: contradicted(error, rolls.biasFt), heightCorrectionFt, antennaHeightFt };
  return { flown: flownAt(track, flown.deviations, flown.facility, known), found, issues };
}

/** What the rolls of a flight show its heights to be high by, and when they were. */
interface Rolls {
  readonly biasFt: number;
  readonly rollS: readonly number[];
}

function rollsOf(flown: Flown, { approaches }: FoundApproaches): Rolls | null {
  const rolls = approaches.flatMap((approach) => {
    const biasFt = rolloutOf(flown, approach)?.heightBiasFt ?? null;
    return biasFt === null ? [] : [{ biasFt, touchdownS: approach.endS }];
  });
  if (rolls.length === 0) return null;
  return {
    biasFt: median(rolls.map(({ biasFt }) => biasFt)),
    rollS: rolls.map(({ touchdownS }) => touchdownS),
  };
}

/** Whether heights are off by more than they may be, and the roll too. */
function isContradicted({ track, error, facility }: Flown, { biasFt, rollS }: Rolls): boolean {
  const i = Math.min(firstAtOrAfter(track.timeS, rollS[0]!), track.count - 1);
  return Math.abs(biasFt) > Math.hypot(error.heightFt(i), rollErrorFt(farEndKnown(facility)));
}

function farEndKnown({ origins }: Flown['facility']): boolean {
  return origins.farEndElevationFt === 'given';
}

function corrected(flown: Flown, gateDatumFt: number, { biasFt, rollS }: Rolls): WithHeights {
  const { track, facility, error, antennaHeightFt } = flown;
  const moved = { ...track, altitudeFt: track.altitudeFt.map((heightFt) => heightFt - biasFt) };
  const narrowed = calibrated(error, track.timeS, rollS, farEndKnown(facility));
  const known = { error: narrowed, heightCorrectionFt: biasFt, antennaHeightFt };
  const again = flownAt(moved, projectTrack(moved, facility), facility, known);
  return { flown: again, found: findApproaches(again, gateDatumFt), issues: [taken(biasFt)] };
}

function notTaken(biasFt: number): Issue {
  return issue(
    'caution',
    'heights-contradicted',
    `The roll after landing shows the heights of the log to be off by ${Math.abs(Math.round(biasFt))} ft, more than they should be: ` +
      'they are as logged, and every one is taken to be as far off.',
    { tip: 'The roll can be used to correct them.' },
  );
}

function taken(biasFt: number): Issue {
  const whole = Math.abs(Math.round(biasFt));
  const feet = `${whole} ft ${whole === 1 ? 'was' : 'were'}`;
  return issue(
    'caution',
    'heights-from-rollout',
    `${feet} ${biasFt > 0 ? 'taken off' : 'added to'} every height of the log, as the roll after landing shows.`,
    { tip: 'A receiver drifts: the longer before the landing, the less that holds.' },
  );
}

const NO_ROLL = issue(
  'caution',
  'heights-without-rollout',
  'The heights are as logged: no roll after a landing on this runway shows what they are off by.',
  { tip: 'If they are from a better receiver than a phone, state it.' },
);
const TOO_FAR_OFF = issue(
  'caution',
  'heights-too-far-off',
  `The heights are as logged: on the roll they are off by more than the ${OFF_HEIGHT_FT} ft that a receiver can be.`,
);
const NOT_BY_SATELLITE = issue(
  'caution',
  'heights-not-by-satellite',
  'The heights are as logged: those of an altimeter are not corrected by a roll.',
);
