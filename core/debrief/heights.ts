import { findApproaches, type FoundApproaches } from '../approach/find-approaches.ts';
import { flownAt, type Flown } from '../approach/flown.ts';
import { OFF_HEIGHT_FT, rolloutOf } from '../approach/rollout.ts';
import { projectTrack } from '../deviation/project-track.ts';
import { issue, type Issue } from '../issue/issue.ts';
import { median } from '../numeric/median.ts';
import { calibrated, isBySatellite } from '../track/position-error.ts';

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
 * done where it is asked for, and of itself to a phone's heights. The indicated altitude is never touched.
 */
export function withHeights(flown: Flown, gateDatumFt: number, asked: Heights | null): WithHeights {
  const found = findApproaches(flown, gateDatumFt);
  const asLogged = (...issues: Issue[]) => ({ flown, found, issues });
  const { track, facility, error } = flown;
  const heights = asked ?? (isPhones(flown) ? 'from-rollout' : 'as-logged');
  if (heights === 'as-logged') return asLogged();
  if (!isBySatellite(track)) return asLogged(NOT_BY_SATELLITE);
  const rolls = found.approaches.flatMap((approach) => {
    const biasFt = rolloutOf(flown, approach)?.heightBiasFt ?? null;
    return biasFt === null ? [] : [{ biasFt, touchdownS: approach.endS }];
  });
  if (rolls.length === 0)
    return asLogged(...(asked === null && found.approaches.length === 0 ? [] : [NO_ROLL]));
  const biasFt = median(rolls.map((roll) => roll.biasFt));
  // So far off, it is the facility or the column that is wrong, and correcting would hide it.
  if (Math.abs(biasFt) > OFF_HEIGHT_FT) return asLogged(TOO_FAR_OFF);
  const corrected = { ...track, altitudeFt: track.altitudeFt.map((heightFt) => heightFt - biasFt) };
  const farEndKnown = facility.origins.farEndElevationFt === 'given';
  const rollS = rolls.map(({ touchdownS }) => touchdownS);
  const narrowed = calibrated(error, track.timeS, rollS, farEndKnown);
  const { antennaHeightFt } = flown;
  const known = { error: narrowed, heightCorrectionFt: biasFt, antennaHeightFt };
  const again = flownAt(corrected, projectTrack(corrected, facility), facility, known);
  return {
    flown: again,
    found: findApproaches(again, gateDatumFt),
    issues: [taken(biasFt)],
  };
}

/** Heights of a phone, which says nothing itself of how good they are. */
function isPhones({ track, error }: Flown): boolean {
  return track.receiver.kind === 'phone' && error.heightFrom === 'class';
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
