import { checkFacility } from '../../../core/facility/contradictions.ts';
import { deriveGeometry, type FacilityGeometry } from '../../../core/facility/derive-geometry.ts';
import type { Facility } from '../../../core/facility/facility-schema.ts';
import { parseFacility } from '../../../core/facility/parse-facility.ts';
import type { Issue } from '../../../core/issue/issue.ts';

/**
 * An invented aerodrome in the open ocean with every key of the format, consistent in itself: bearing 071 true,
 * variation 11 west, localizer and glidepath antennas given.
 */
export const FULL = {
  format: 'halfdot-facility/1',
  name: 'Quillmere ILS 08',
  ident: 'IQLM',
  frequencyMHz: 110.35,
  airportElevationFt: 130,
  runway: {
    designator: '08',
    threshold: { latDeg: 47.2, lonDeg: -35.4, elevationFt: 100 },
    farEnd: { latDeg: 47.20713665, lonDeg: -35.36956831, elevationFt: 130 },
    trueBearingDeg: 71,
    lengthFt: 8000,
    widthFt: 148,
    touchdownZoneElevationFt: 112,
  },
  localizer: {
    courseTrueDeg: 71.025,
    courseMagneticDeg: 82,
    antenna: { latDeg: 47.20802817, lonDeg: -35.36576377, elevationFt: 131 },
    antennaSetbackFt: 1000,
    courseWidthDeg: 4.45,
  },
  glidepath: {
    angleDeg: 3,
    thresholdCrossingHeightFt: 55,
    antenna: { latDeg: 47.19998523, lonDeg: -35.39573811, elevationFt: 103 },
    fullScaleDeg: 0.7,
  },
  minimums: { decisionAltitudeFt: 312, rvrFt: 2400 },
  finalApproachFix: { name: 'QUENT', distanceNm: 5.2, altitudeFt: 1800, dmeNm: 6.1 },
  missedApproach: { climbToFt: 2500, instructions: 'Climb straight ahead to 2,500 ft.\nHold at QUORN.' },
  magneticVariationDeg: -11,
};

/** The least that a facility needs. */
export const LEAST = {
  format: 'halfdot-facility/1',
  name: 'Quillmere',
  runway: {
    designator: '08',
    threshold: { latDeg: 47.2, lonDeg: -35.4, elevationFt: 100 },
    trueBearingDeg: 71,
    lengthFt: 8000,
  },
  glidepath: { angleDeg: 3, thresholdCrossingHeightFt: 55 },
};

export type Json = { [key: string]: unknown };

/** A deep copy with the value at a dotted path replaced; `undefined` leaves the key out. */
export function withValue(facility: object, path: string, value: unknown): Json {
  const copy = structuredClone(facility) as Json;
  const keys = path.split('.');
  let group = copy;
  for (const key of keys.slice(0, -1)) group = (group[key] ??= {}) as Json;
  if (value === undefined) delete group[keys.at(-1)!];
  else group[keys.at(-1)!] = value;
  return copy;
}

/** A facility of these values, which must be usable. */
export function facilityOf(values: object): Facility {
  const parsed = parseFacility(JSON.stringify(values), 'test.json');
  if (!parsed.ok) throw new Error(parsed.refusal.message);
  return parsed.value;
}

export function geometryOf(values: object): FacilityGeometry {
  return deriveGeometry(facilityOf(values));
}

export function issuesOf(values: object, onDate: number | null = 2025.5): Issue[] {
  return checkFacility(facilityOf(values), geometryOf(values), onDate);
}
