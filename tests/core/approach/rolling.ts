import { THRESHOLD_FT, type Making } from './make-flown.ts';

/**
 * On the ground from 10 to 50 s, 70 kt falling to 30, on a flat runway: 0.01 NM a second is 61 ft. The antenna is 6 ft
 * above it.
 */
export const ROLL = { first: 10, last: 50 };
export const ROLLING: Making = {
  untilS: 60,
  distanceNm: (s) => -0.1 - 0.01 * s,
  groundspeedKt: (s) => 80 - s,
  heightFt: 6,
  facility: { farEnd: { latDeg: 0, lonDeg: 0, elevationFt: THRESHOLD_FT } },
};
