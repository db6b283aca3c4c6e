import type { Until } from './cockpit.ts';

/** The moments at which a leg ends, named as a pilot would say them. */
export const after =
  (seconds: number): Until =>
  (cockpit) =>
    cockpit.legS >= seconds;

export const closerThan =
  (distanceNm: number): Until =>
  (cockpit) =>
    cockpit.now.distanceToThresholdNm < distanceNm;

export const fartherThan =
  (distanceNm: number): Until =>
  (cockpit) =>
    cockpit.now.distanceToThresholdNm > distanceNm;

/** When the aircraft is right of this many full scales of localizer. */
export const rightOf =
  (fullScale: number): Until =>
  (cockpit) =>
    cockpit.now.localizerFullScale > fullScale;

export const leftOf =
  (fullScale: number): Until =>
  (cockpit) =>
    cockpit.now.localizerFullScale < fullScale;

export const aboveGlidepath =
  (fullScale: number): Until =>
  (cockpit) =>
    cockpit.now.glidepathFullScale > fullScale;

export const belowGlidepath =
  (fullScale: number): Until =>
  (cockpit) =>
    cockpit.now.glidepathFullScale < fullScale;

export const belowIndicated =
  (altitudeFt: number): Until =>
  (cockpit) =>
    cockpit.indicatedFt <= altitudeFt;

export const aboveIndicated =
  (altitudeFt: number): Until =>
  (cockpit) =>
    cockpit.indicatedFt >= altitudeFt;

export const onTheGround: Until = (cockpit) => cockpit.state.onGround;

export const slowerThan =
  (groundspeedKt: number): Until =>
  (cockpit) =>
    cockpit.groundspeedKt < groundspeedKt;

export const airborne: Until = (cockpit) => !cockpit.state.onGround;

export const either =
  (...moments: readonly Until[]): Until =>
  (cockpit) =>
    moments.some((moment) => moment(cockpit));
