import { flownThroughFix } from './localizer-events.ts';
import type { Pass } from './passes.ts';
import { firstWhere, placeOf, range } from './searching.ts';
import type { TrueApproach } from './true-approach.ts';
import type { ViewedFlight } from './viewed-flight.ts';

/** Nearer than this, a pass joins too late to be an approach. */
const LATEST_NM = 3;
const SHORTEST_VISUAL_NM = 1.5;

/** What a pass is; null when it is not even listed. */
export function kindOfPass(
  view: ViewedFlight,
  pass: Pass,
  found: { establishedS: number | null; fixS: number | null; interceptS: number | null },
): TrueApproach['kind'] | null {
  if (belongsBeside(view, pass)) return null;
  const joinedNm = found.establishedS === null ? NaN : view.distanceNm[placeOf(view, found.establishedS)]!;
  if (joinedNm >= LATEST_NM)
    return cameDown(view, pass) && carriedOn(view, pass, found) ? 'approach' : 'localizer-pass';
  if (flownThroughFix(view, pass, found.fixS) && cameDown(view, pass)) return 'approach';
  return joinedNm >= SHORTEST_VISUAL_NM ? 'visual-final' : null;
}

/** 300 ft lower on the localizer, and into the glidepath's scale or below 1,000 ft. */
function cameDown(view: ViewedFlight, pass: Pass): boolean {
  const on = range(pass.first, pass.last).filter((i) => view.onLocalizer[i] === 1);
  const lowFt = view.facility.runway.touchdownZoneElevationFt + 1000;
  let highestFt = -Infinity;
  let lostFt = 0;
  for (const i of on) {
    highestFt = Math.max(highestFt, view.heightFt[i]!);
    lostFt = Math.max(lostFt, highestFt - view.heightFt[i]!);
  }
  return lostFt >= 300 && on.some((i) => Math.abs(view.glidepath[i]!) <= 1 || view.heightFt[i]! < lowFt);
}

function carriedOn(
  view: ViewedFlight,
  pass: Pass,
  { establishedS, interceptS }: { establishedS: number | null; interceptS: number | null },
): boolean {
  const after = range(placeOf(view, establishedS!), pass.last).filter((i) => view.onLocalizer[i] === 1);
  if (after.some((i) => view.distanceNm[i]! <= 4 && Math.abs(view.localizer[i]!) <= 0.5)) return true;
  if (interceptS === null) return false;
  const lowFt = view.heightFt[placeOf(view, interceptS)]! - 300;
  return after.some(
    (i) => view.distanceNm[i]! <= 10 && Math.abs(view.localizer[i]!) <= 0.25 && view.heightFt[i]! <= lowFt,
  );
}

/**
 * Low beside this runway, and so far aside already all the way from the fix while within full scale. Farther out the
 * turn onto the other runway's line is still being flown.
 */
function belongsBeside(view: ViewedFlight, pass: Pass): boolean {
  const abeam = firstWhere({ first: pass.first, last: pass.until }, (i) => view.distanceNm[i]! <= 0);
  if (abeam === null) return false;
  const { runway, finalApproachFix } = view.facility;
  const besideFt = Math.abs(view.centrelineFt[abeam]!);
  const low = view.heightFt[abeam]! < runway.touchdownZoneElevationFt + 500;
  if (!low || besideFt <= Math.max(400, runway.widthFt / 2) || Math.abs(view.courseAngleDeg[abeam]!) > 45)
    return false;
  const onFinal = range(pass.first, pass.last).filter(
    (i) => view.onLocalizer[i] === 1 && view.distanceNm[i]! <= finalApproachFix.distanceNm,
  );
  const besideCourseFt = view.rightOfCourseFt[abeam]!;
  return (
    onFinal.length > 0 && onFinal.every((i) => Math.abs(view.rightOfCourseFt[i]! - besideCourseFt) <= 400)
  );
}
