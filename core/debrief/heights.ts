import { findApproaches, type FoundApproaches } from '../approach/find-approaches.ts';
import { flownAt, type Flown } from '../approach/flown.ts';
import { OFF_HEIGHT_FT, rolloutOf } from '../approach/rollout.ts';
import { projectTrack } from '../deviation/project-track.ts';
import { issue, type Issue } from '../issue/issue.ts';
import { median } from '../numeric/median.ts';
import type { AltitudeSource } from '../track/track.ts';

/** Whether heights are taken as they were logged, or as a roll after a landing shows them to be. */
export type Heights = 'as-logged' | 'from-rollout';

/** Heights by satellite, whose bias a roll shows; an altimeter's is its setting, and the pilot's own. */
const BY_SATELLITE: ReadonlySet<AltitudeSource> = new Set(['geometric', 'ellipsoid-less-geoid', 'unnamed']);

interface WithHeights {
  readonly flown: Flown;
  readonly found: FoundApproaches;
  /** Taken off every height. */
  readonly correctionFt: number;
  readonly issues: readonly Issue[];
}

/**
 * Finds the approaches of a flight, its heights corrected by what its rolls show if that is asked for: the middle of
 * all of them. The indicated altitude is never touched.
 */
export function withHeights(flown: Flown, gateDatumFt: number, heights: Heights): WithHeights {
  const found = findApproaches(flown, gateDatumFt);
  const asLogged = (...issues: Issue[]) => ({ flown, found, correctionFt: 0, issues });
  if (heights === 'as-logged') return asLogged();
  const { track, facility } = flown;
  if (!BY_SATELLITE.has(track.altitudeSource)) return asLogged(NOT_BY_SATELLITE);
  const biasFt = median(
    found.approaches.flatMap((approach) => rolloutOf(flown, approach)?.heightBiasFt ?? []),
  );
  if (Number.isNaN(biasFt)) return asLogged(NO_ROLL);
  // So far off, it is the facility or the column that is wrong, and correcting would hide it.
  if (Math.abs(biasFt) > OFF_HEIGHT_FT) return asLogged(TOO_FAR_OFF);
  const corrected = { ...track, altitudeFt: track.altitudeFt.map((heightFt) => heightFt - biasFt) };
  const again = flownAt(corrected, projectTrack(corrected, facility), facility, flown.antennaHeightFt);
  return {
    flown: again,
    found: findApproaches(again, gateDatumFt),
    correctionFt: biasFt,
    issues: [taken(biasFt)],
  };
}

function taken(biasFt: number): Issue {
  const feet = `${Math.abs(Math.round(biasFt))} ft`;
  return issue(
    'caution',
    'heights-from-rollout',
    `${feet} were ${biasFt > 0 ? 'taken off' : 'added to'} every height of the log, as the roll after landing shows.`,
    { tip: 'A receiver drifts: the longer before the landing, the less that holds.' },
  );
}

const NO_ROLL = issue(
  'caution',
  'heights-without-rollout',
  'The heights are as logged: no roll after a landing on this runway shows what they are off by.',
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
