import type { FacilityGeometry } from '../facility/derive-geometry.ts';
import { glidepathFeet, localizerFeet } from '../facility/needle-feet.ts';
import type { BriefedDecision, BriefedNeedles } from './briefing.ts';

const PLACES_NM = [5, 3, 1] as const;
/** The limits of the published standards. */
const QUARTERS = [0.25, 0.5, 0.75] as const;

/** What the needles mean in feet, on the way in and at decision altitude: one dot, and the limits of the standards. */
export function needlesOf(
  geometry: FacilityGeometry,
  dots: BriefedNeedles['dots'],
  decision: BriefedDecision | null,
): BriefedNeedles {
  const places = [
    ...PLACES_NM.map((distanceNm) => ({ distanceNm, isDecision: false })),
    ...(decision === null ? [] : [{ distanceNm: decision.distanceNm, isDecision: true }]),
  ];
  const fractions = [...new Set([1 / dots, ...QUARTERS])].toSorted((a, b) => a - b);
  const feet = (of: typeof localizerFeet, fraction: number) =>
    places.map(({ distanceNm }) => of(geometry, distanceNm, fraction));
  const rows = fractions.map((fraction) => ({
    fraction,
    localizerFt: feet(localizerFeet, fraction),
    glidepathFt: feet(glidepathFeet, fraction),
  }));
  return { dots, places, rows };
}
