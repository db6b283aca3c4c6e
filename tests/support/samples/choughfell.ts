import { placeAlong } from '../flight/beam-truth.ts';
import type { FacilityFile } from '../flight/facility-file.ts';
import { roundTo } from './round-to.ts';

const THRESHOLD = { latDeg: -47.5, lonDeg: -116.3, elevationFt: 5812 };
const BEARING_TRUE_DEG = 347;
const LENGTH_FT = 9000;

/** High and steep, in thin air: more than half as much sink again, and more speed for the same airspeed. */
export const CHOUGHFELL: FacilityFile = {
  format: 'halfdot-facility/1',
  name: 'Choughfell ILS 32',
  ident: 'IZCH',
  frequencyMHz: 109.75,
  airportElevationFt: 5846,
  runway: {
    designator: '32',
    threshold: THRESHOLD,
    farEnd: { ...roundTo(7, placeAlong(THRESHOLD, BEARING_TRUE_DEG, LENGTH_FT)), elevationFt: 5846 },
    widthFt: 100,
    touchdownZoneElevationFt: 5824,
  },
  localizer: { courseMagneticDeg: 319, antennaSetbackFt: 1200, courseWidthDeg: 4 },
  glidepath: {
    angleDeg: 3.5,
    thresholdCrossingHeightFt: 56,
    antenna: { ...roundTo(7, placeAlong(THRESHOLD, BEARING_TRUE_DEG, 900, 250)), elevationFt: 5812.5 },
  },
  minimums: { decisionAltitudeFt: 6030, rvrFt: 2400 },
  finalApproachFix: { name: 'CHOFA', distanceNm: 5.5, altitudeFt: 7900 },
  missedApproach: {
    climbToFt: 8000,
    instructions: 'Climb straight ahead to 6,600 ft, then a climbing right turn to 8,000 ft to KRAVI and hold.',
  },
  magneticVariationDeg: 27.9,
};
