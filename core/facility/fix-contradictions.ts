import { issue, type Issue } from '../issue/issue.ts';
import type { FacilityGeometry } from './derive-geometry.ts';
import type { Facility } from './facility-schema.ts';
import { distanceAtGlidepathAltitudeNm, glidepathAltitudeFt } from './path-altitude.ts';
import { decimal } from './wording.ts';
import { whole } from '../units/whole.ts';

/** Published altitudes at the fix are rounded, and some lie a little below the path (our own choice). */
const FIX_ALTITUDE_SLACK_FT = 100;

export function fixContradictions(facility: Facility, geometry: FacilityGeometry): Issue[] {
  const given = facility.finalApproachFix;
  if (given === undefined) return [];
  return [
    ...(given.distanceNm === undefined ? noDistance(given, geometry) : []),
    ...(given.altitudeFt === undefined ? [] : altitudeAgainstPath(given.altitudeFt, geometry)),
    ...altitudeAgainstMinimum(facility),
  ];
}

function noDistance({ dmeNm }: { dmeNm?: number | undefined }, geometry: FacilityGeometry): Issue[] {
  const { distanceNm } = geometry.finalApproachFix;
  const message = `finalApproachFix has no distanceNm; final is taken to begin ${decimal(distanceNm)} NM from the threshold, where the glidepath is 1,500 ft above the touchdown zone`;
  const tip =
    dmeNm === undefined
      ? 'Give finalApproachFix.distanceNm, the distance to the threshold.'
      : `${decimal(dmeNm, 2)} is a DME reading, and a DME rarely stands at the threshold: give distanceNm as well.`;
  return [issue('caution', 'facility-fix-distance-missing', `${message}.`, { tip })];
}

function altitudeAgainstPath(altitudeFt: number, geometry: FacilityGeometry): Issue[] {
  const { distanceNm } = geometry.finalApproachFix;
  if (geometry.origins.finalApproachFix === 'assumed') return [];
  const pathFt = glidepathAltitudeFt(geometry, distanceNm);
  if (Math.abs(pathFt - altitudeFt) <= FIX_ALTITUDE_SLACK_FT) return [];
  const fits = distanceAtGlidepathAltitudeNm(geometry, altitudeFt);
  const message = `At the fix, ${decimal(distanceNm, 2)} NM from the threshold, the glidepath is at ${whole(pathFt)} ft, but finalApproachFix.altitudeFt is ${whole(altitudeFt)}, where the path is ${decimal(fits)} NM out`;
  const tip = `Is ${decimal(distanceNm, 2)} a DME reading? Then it belongs in dmeNm, and distanceNm is to the threshold. If not, check altitudeFt.`;
  return [issue('warning', 'facility-fix-off-glidepath', `${message}.`, { tip })];
}

function altitudeAgainstMinimum({ finalApproachFix, minimums }: Facility): Issue[] {
  const fixFt = finalApproachFix?.altitudeFt;
  const decisionFt = minimums?.decisionAltitudeFt;
  if (fixFt === undefined || decisionFt === undefined || fixFt > decisionFt) return [];
  const message = `finalApproachFix.altitudeFt is ${whole(fixFt)}, not above the decision altitude of ${whole(decisionFt)}`;
  const tip = 'Both count from sea level: check finalApproachFix.altitudeFt and minimums.decisionAltitudeFt.';
  return [issue('warning', 'facility-fix-below-minimum', `${message}.`, { tip })];
}
