import type { FacilityGeometry } from '../facility/derive-geometry.ts';
import { glidepathAltitudeFt } from '../facility/path-altitude.ts';
import { refused, usable, type Outcome } from '../issue/issue.ts';
import { whole } from '../units/whole.ts';

const FROM_THE_CHART = 'Take it from the current chart.';

/**
 * The decision altitude that was typed, and typed again: a slip in it is the one that kills, and two slips are seldom
 * alike. Null where neither was typed. It is never derived, nor taken from the facility.
 */
export function agreedDecisionAltitude(
  firstFt: number | null,
  againFt: number | null,
  geometry: FacilityGeometry,
): Outcome<number | null> {
  if (firstFt === null && againFt === null) return usable(null);
  if (firstFt === null || againFt === null)
    return refused('decision-altitude-once', 'The decision altitude was typed once: type it again.');
  if (firstFt !== againFt)
    return refused(
      'decision-altitudes-differ',
      `The two decision altitudes differ: ${feet(firstFt)} and ${feet(againFt)}. Neither is on the sheet.`,
      { tip: FROM_THE_CHART },
    );
  return possible(firstFt, geometry);
}

function possible(altitudeFt: number, geometry: FacilityGeometry): Outcome<number> {
  const { touchdownZoneElevationFt: zoneFt, finalApproachFix } = geometry;
  const fixFt = glidepathAltitudeFt(geometry, finalApproachFix.distanceNm);
  const said = `A decision altitude of ${feet(altitudeFt)} is`;
  if (altitudeFt <= zoneFt)
    return refused(
      'decision-altitude-impossible',
      `${said} not above the touchdown zone, which is at ${feet(zoneFt)}.`,
      { tip: `It counts from sea level. ${FROM_THE_CHART}` },
    );
  if (altitudeFt >= fixFt)
    return refused(
      'decision-altitude-impossible',
      `${said} not below the glidepath at the fix, which is at ${feet(fixFt)} there.`,
      { tip: FROM_THE_CHART },
    );
  return usable(altitudeFt);
}

function feet(altitudeFt: number): string {
  return `${whole(altitudeFt)} ft`;
}
