import { issue, type Issue } from '../issue/issue.ts';
import { isBySatellite } from '../track/position-error.ts';
import { whole } from '../units/whole.ts';
import type { FlownApproach } from './flown-approach.ts';
import type { Flown } from './flown.ts';
import { runwayElevationFt } from './on-ground.ts';
import { OFF_HEIGHT_FT, rolloutOf, settledFt } from './rollout.ts';

/** What an altimeter may be off by on the ground, and still be flown with (AIM 7-2-3; from memory). */
const TOLERANCE_FT = 75;

/**
 * What the rolls of a flight say against its indicated altitude. It changes no verdict: what the altimeter showed is
 * what the pilot flew by.
 */
export function altimeterDoubts(flown: Flown, approaches: readonly FlownApproach[]): Issue[] {
  const rollsFt = approaches.flatMap((approach) => {
    const offFt = altimeterOffFt(flown, approach);
    return offFt === null ? [] : [offFt];
  });
  const off = rollsFt.filter((ft) => Math.abs(ft) >= TOLERANCE_FT);
  if (off.length === 0) return [];
  const worstFt = off.reduce((most, ft) => (Math.abs(ft) > Math.abs(most) ? ft : most));
  const [high, lower] = worstFt > 0 ? ['high', 'lower'] : ['low', 'higher'];
  const where =
    rollsFt.length === 1
      ? 'On the roll after landing the indicated altitude was'
      : `On ${off.length} of ${rollsFt.length} rolls after landing the indicated altitude was off, at most`;
  const message =
    `${where} ${whole(Math.abs(worstFt))} ft too ${high}: decision altitude and gates were passed about as much ` +
    `${lower} than it showed, and they are judged by what it showed.`;
  return [issue('warning', 'altimeter-off-on-roll', message, { count: off.length, tip: TIP })];
}

const TIP =
  "Check the altimeter setting that was flown with (1 hPa is 27 ft), and which height the log's column holds, in which unit.";

/**
 * What the altimeter showed on a roll less the runway's elevation there, feet. Null without a roll or an altimeter;
 * and where heights by satellite stand as far off: then it is the facility that is asked about (`facilityDoubts`).
 */
function altimeterOffFt(flown: Flown, approach: FlownApproach): number | null {
  const { roll } = approach;
  const indicatedFt = flown.track.altitudeIndicatedFt;
  if (roll === null || indicatedFt === null) return null;
  const offFt = settledFt(flown, roll, (i) => indicatedFt[i]! - runwayElevationFt(flown, i));
  const biasFt = isBySatellite(flown.track) ? (rolloutOf(flown, approach)?.heightBiasFt ?? 0) : 0;
  const isFacility = Math.abs(biasFt) > OFF_HEIGHT_FT && Math.abs((offFt ?? 0) - biasFt) < TOLERANCE_FT;
  return isFacility ? null : offFt;
}
