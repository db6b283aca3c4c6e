import { geodesicBetween } from '../../core/earth/geodesic.ts';
import { gradientFtPerNm } from '../../core/facility/descent-rate.ts';
import type { FacilityGeometry } from '../../core/facility/derive-geometry.ts';
import type { Facility } from '../../core/facility/facility-schema.ts';
import { localizerFeet } from '../../core/facility/needle-feet.ts';
import { glidepathAltitudeFt } from '../../core/facility/path-altitude.ts';
import { magneticFromTrue, magneticVariation } from '../../core/facility/variation.ts';
import { bearingWords, decimal, variationWords } from '../../core/facility/wording.ts';
import { FEET_PER_METRE } from '../../core/units/units.ts';
import { whole } from '../../core/units/whole.ts';
import type { FacilityFact } from './protocol.ts';

/** What is compared with the chart while a facility is typed in: what its values come to, each with its source. */
export function factsOf(facility: Facility, geometry: FacilityGeometry, onDate: number): FacilityFact[] {
  return [
    ...runwayFacts(geometry),
    ...courseFacts(facility, geometry, onDate),
    ...glidepathFacts(geometry),
    ...fixFacts(geometry),
    ...minimumFacts(geometry),
  ];
}

function fact(words: string, value: string, from: string | null = null): FacilityFact {
  return { words, value, from };
}

function runwayFacts({ lengthFt, trueBearingDeg, origins }: FacilityGeometry): FacilityFact[] {
  const from = origins.lengthFt === 'given' ? 'given' : 'from the two ends';
  return [
    fact('Runway length', `${whole(lengthFt)} ft`, from),
    fact('Runway, true', `${bearingWords(trueBearingDeg, 2)}°`, from),
  ];
}

function courseFacts(facility: Facility, geometry: FacilityGeometry, onDate: number): FacilityFact[] {
  const { courseTrueDeg, courseOffsetDeg, localizerAntenna, localizerFullScaleDeg, origins } = geometry;
  const { usedDeg } = magneticVariation(facility, geometry, onDate);
  const isGiven = facility.magneticVariationDeg !== undefined;
  const antennaFt = geodesicBetween(geometry.threshold, localizerAntenna).distanceM * FEET_PER_METRE;
  const offset = decimal(courseOffsetDeg, 2);
  const setback = `${whole(antennaFt - geometry.lengthFt)} ft past the far end`;
  return [
    ...(usedDeg === null
      ? [fact('Variation', 'not known', 'the magnetic model has none for today')]
      : [
          fact('Variation', variationWords(usedDeg), isGiven ? 'given' : 'by the magnetic model, today'),
          fact('Course, magnetic', `${bearingWords(magneticFromTrue(courseTrueDeg, usedDeg), 1)}°`),
        ]),
    fact(
      'Course, true',
      `${bearingWords(courseTrueDeg, 2)}°`,
      Number(offset) === 0 ? 'along the runway' : `${offset}° off the runway`,
    ),
    fact(
      'Threshold to antenna',
      `${whole(antennaFt)} ft`,
      origins.localizerAntenna === 'assumed' ? `assumed ${setback}` : setback,
    ),
    fact(
      'Localizer full scale',
      `${localizerFullScaleDeg.toFixed(2)}° either side`,
      `${whole(localizerFeet(geometry, 0, 1))} ft at the threshold`,
    ),
  ];
}

function glidepathFacts({ glidepathAngleDeg, glidepathFullScaleDeg }: FacilityGeometry): FacilityFact[] {
  return [
    fact(
      'Glidepath',
      `${glidepathAngleDeg.toFixed(2)}°`,
      `${whole(gradientFtPerNm(glidepathAngleDeg))} ft/NM`,
    ),
    fact('Glidepath full scale', `${glidepathFullScaleDeg.toFixed(2)}° either side`),
  ];
}

function fixFacts(geometry: FacilityGeometry): FacilityFact[] {
  const { distanceNm, altitudeFt } = geometry.finalApproachFix;
  const path = `${whole(glidepathAltitudeFt(geometry, distanceNm))} ft`;
  const assumed = geometry.origins.finalApproachFix === 'assumed' ? ', assumed' : '';
  const published = altitudeFt === null ? '' : `; ${whole(altitudeFt)} ft given`;
  return [fact('Glidepath at the fix', path, `${distanceNm.toFixed(1)} NM out${assumed}${published}`)];
}

function minimumFacts({ decisionAltitudeFt, touchdownZoneElevationFt }: FacilityGeometry): FacilityFact[] {
  if (decisionAltitudeFt === null)
    return [fact('Decision height', 'not known', 'no decision altitude given')];
  const height = `${whole(decisionAltitudeFt - touchdownZoneElevationFt)} ft`;
  return [
    fact('Decision height', height, `above the touchdown zone at ${whole(touchdownZoneElevationFt)} ft`),
  ];
}
