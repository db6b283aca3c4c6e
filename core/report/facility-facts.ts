import { geodesicBetween } from '../earth/geodesic.ts';
import { gradientFtPerNm } from '../facility/descent-rate.ts';
import type { FacilityGeometry, Origin } from '../facility/derive-geometry.ts';
import type { Facility } from '../facility/facility-schema.ts';
import { magneticFromTrue } from '../facility/variation.ts';
import { bearingWords, decimal, variationWords } from '../facility/wording.ts';
import { whole } from '../units/whole.ts';
import { FEET_PER_METRE } from '../units/units.ts';
import { textLines, textRow } from './text-rows.ts';

/** What a facility is, block by block, each line with where its value comes from: given, derived or assumed. */
export function facilityFacts(facility: Facility, geometry: FacilityGeometry): string[][] {
  return [
    runwayFacts(facility, geometry),
    localizerFacts(facility, geometry),
    glidepathFacts(facility, geometry),
    missedApproachFacts(facility),
  ];
}

function runwayFacts({ runway }: Facility, geometry: FacilityGeometry): string[] {
  const { trueBearingDeg, lengthFt, widthFt, threshold, touchdownZoneElevationFt, origins } = geometry;
  const fromEnds = source(origins.lengthFt, { derived: 'from the two ends' });
  const zone = source(origins.touchdownZoneElevationFt, {
    derived: 'highest of the first 3,000 ft between the ends',
    assumed: "assumed: the threshold's",
  });
  return [
    `Runway ${runway.designator}`,
    textRow('Bearing', `${bearingWords(trueBearingDeg, 2)}° true`, fromEnds),
    textRow('Length', `${whole(lengthFt)} ft`, fromEnds),
    textRow('Width', `${whole(widthFt)} ft`, source(origins.widthFt)),
    textRow('Threshold elevation', `${whole(threshold.elevationFt)} ft`, 'given'),
    textRow('Touchdown zone', `${whole(touchdownZoneElevationFt)} ft`, zone),
  ];
}

function localizerFacts(facility: Facility, geometry: FacilityGeometry): string[] {
  const { courseTrueDeg, localizerFullScaleDeg, localizerAntenna, threshold, lengthFt, origins } = geometry;
  const distanceFt = geodesicBetween(localizerAntenna, threshold).distanceM * FEET_PER_METRE;
  const setback = `${whole(distanceFt - lengthFt)} ft past the end`;
  const antenna = source(origins.localizerAntenna, {
    derived: `on the centreline, ${setback}`,
    assumed: `assumed on the centreline, ${setback}`,
  });
  return [
    'Localizer',
    textRow(
      'Course, true',
      `${bearingWords(courseTrueDeg, 2)}°`,
      source(origins.courseTrueDeg, { derived: "the runway's" }),
    ),
    magneticCourse(facility, geometry),
    textRow('Threshold to antenna', `${whole(distanceFt)} ft`, antenna),
    textRow(
      'Full scale, one side',
      `${localizerFullScaleDeg.toFixed(2)}°`,
      source(origins.localizerFullScaleDeg, {
        given: 'half the course width given',
        derived: '350 ft at the threshold, within 1.5° to 3°',
      }),
    ),
  ];
}

function magneticCourse(facility: Facility, { courseTrueDeg }: FacilityGeometry): string {
  const given = facility.localizer?.courseMagneticDeg;
  const variationDeg = facility.magneticVariationDeg;
  if (given !== undefined) {
    const shown = bearingWords(given, Number.isInteger(given) ? 0 : 1);
    return textRow('Course, magnetic', `${shown}°`, 'given');
  }
  if (variationDeg === undefined) return textRow('Course, magnetic', 'not given', 'nor is a variation');
  const shown = bearingWords(magneticFromTrue(courseTrueDeg, variationDeg), 1);
  return textRow('Course, magnetic', `${shown}°`, `from variation ${variationWords(variationDeg)}`);
}

function glidepathFacts(facility: Facility, geometry: FacilityGeometry): string[] {
  const { glidepathAngleDeg, glidepathFullScaleDeg, glidepathOrigin, threshold, origins } = geometry;
  const interceptFt = geodesicBetween(glidepathOrigin, threshold).distanceM * FEET_PER_METRE;
  const angle = `${glidepathAngleDeg.toFixed(2)}°, ${whole(gradientFtPerNm(glidepathAngleDeg))} ft/NM`;
  return [
    'Glidepath',
    textRow('Angle', angle, 'given'),
    textRow('Threshold crossing', `${decimal(facility.glidepath.thresholdCrossingHeightFt)} ft`, 'given'),
    textRow(
      'Threshold to origin',
      `${whole(interceptFt)} ft`,
      source(origins.glidepathOrigin, {
        given: 'the antenna given',
        derived: 'from angle and crossing height',
      }),
    ),
    textRow(
      'Full scale, one side',
      `${glidepathFullScaleDeg.toFixed(2)}°`,
      source(origins.glidepathFullScaleDeg, { derived: '0.24 of the angle' }),
    ),
  ];
}

function missedApproachFacts({ missedApproach }: Facility): string[] {
  const { climbToFt, instructions } = missedApproach ?? {};
  const lines = [
    ...(climbToFt === undefined ? [] : [textRow('Climb to', `${whole(climbToFt)} ft`, 'given')]),
    ...(instructions === undefined ? [] : textLines(instructions, 96).map((line) => `  ${line}`)),
  ];
  return lines.length === 0 ? [] : ['Missed approach', ...lines];
}

function source(origin: Origin, words: Partial<Record<Origin, string>> = {}): string {
  return words[origin] ?? origin;
}
