import { placeAlong } from '../flight/beam-truth.ts';
import type { FacilityFile } from '../flight/facility-file.ts';
import { roundTo } from './round-to.ts';

const THRESHOLD = { latDeg: -28.4, lonDeg: 87.6, elevationFt: 21 };
const BEARING_TRUE_DEG = 115.9;
const LENGTH_FT = 3900;
const COURSE_TRUE_DEG = 118;
/** Where the course crosses the centreline: there the path stands 190 ft above the threshold. */
const CROSSING_FT = 2600;
const ANTENNA_ALONG_FT = LENGTH_FT + 300;
const antennaRightFt =
  (CROSSING_FT + ANTENNA_ALONG_FT) * Math.tan(((COURSE_TRUE_DEG - BEARING_TRUE_DEG) * Math.PI) / 180);

/** Short, its localizer 2.1 degrees off the runway with the antenna beside the centreline. */
export const WHIMBRELNESS: FacilityFile = {
  format: 'halfdot-facility/1',
  name: 'Whimbrelness ILS 13',
  ident: 'IZWH',
  frequencyMHz: 108.35,
  airportElevationFt: 21,
  runway: {
    designator: '13',
    threshold: THRESHOLD,
    farEnd: { ...roundTo(7, placeAlong(THRESHOLD, BEARING_TRUE_DEG, LENGTH_FT)), elevationFt: 15 },
    widthFt: 75,
    touchdownZoneElevationFt: 21,
  },
  localizer: {
    courseTrueDeg: COURSE_TRUE_DEG,
    courseMagneticDeg: 133,
    antenna: {
      ...roundTo(7, placeAlong(THRESHOLD, BEARING_TRUE_DEG, ANTENNA_ALONG_FT, antennaRightFt)),
      elevationFt: 15,
    },
  },
  glidepath: { angleDeg: 3.2, thresholdCrossingHeightFt: 45 },
  minimums: { decisionAltitudeFt: 320, rvrFt: 4000 },
  finalApproachFix: { name: 'WEMLO', distanceNm: 4.5, altitudeFt: 1600 },
  missedApproach: {
    climbToFt: 1800,
    instructions: 'Climbing left turn to 1,800 ft to TERNA and hold.',
  },
  magneticVariationDeg: -15.1,
};
