import { placeAlong } from '../flight/beam-truth.ts';
import type { FacilityFile } from '../flight/facility-file.ts';
import { roundTo } from './round-to.ts';

const THRESHOLD = { latDeg: -31.2, lonDeg: -16.4, elevationFt: 34 };
/** 070 by the compass where the needle points 23.6° west of north. */
const BEARING_TRUE_DEG = 46.4;
const LENGTH_FT = 6500;

/** An invented aerodrome on invented land, where the charts show open ocean: flat, 3 degrees, nothing unusual. */
export const PETRELHOLM: FacilityFile = {
  format: 'halfdot-facility/1',
  name: 'Petrelholm ILS 07',
  ident: 'IZPE',
  frequencyMHz: 110.95,
  airportElevationFt: 46,
  runway: {
    designator: '07',
    threshold: THRESHOLD,
    farEnd: {
      ...roundTo(7, placeAlong(THRESHOLD, BEARING_TRUE_DEG, LENGTH_FT)),
      elevationFt: 46,
    },
    widthFt: 150,
    touchdownZoneElevationFt: 40,
  },
  localizer: { courseMagneticDeg: 70, antennaSetbackFt: 1000 },
  glidepath: { angleDeg: 3, thresholdCrossingHeightFt: 52 },
  minimums: { decisionAltitudeFt: 240, rvrFt: 2400 },
  finalApproachFix: { name: 'PETRU', distanceNm: 5, altitudeFt: 1700, dmeNm: 6.2 },
  missedApproach: {
    climbToFt: 2000,
    instructions: 'Climb straight ahead to 1,000 ft, then a climbing left turn to 2,000 ft to WIMBO and hold.',
  },
  magneticVariationDeg: -23.6,
};
