import { firstAtOrAfter } from '../numeric/polyline.ts';
import type { Flown } from './flown.ts';
import { firstHold, type Condition, type Stretch } from './hold.ts';
import { INBOUND_DEG } from './passes.ts';

/** Established: within half scale and within 10° of the course, for 10 s (design, section 7). */
const ESTABLISHED_FULL_SCALE = 0.5;
const ESTABLISHED_DEG = 10;
const ESTABLISHED_S = 10;
/** Lost: beyond full scale for 3 s. */
const LOST_S = 3;

/** When an aircraft settled on the localizer, lost it, and settled again. */
export interface Capture {
  readonly establishedS: number | null;
  /** In turn: lost, established again, lost ... */
  readonly lostS: readonly number[];
  readonly reEstablishedS: readonly number[];
}

/** Of one who never settled where it counts. */
export const NEVER_SETTLED: Capture = { establishedS: null, lostS: [], reEstablishedS: [] };

export function beforeThreshold({ deviations: { distanceToThresholdNm } }: Flown): Condition {
  // Just short of it: the threshold itself is not before the threshold.
  return {
    holds: (i) => distanceToThresholdNm[i]! > 0,
    margin: (i) => distanceToThresholdNm[i]! - Number.MIN_VALUE,
  };
}

export function withinLocalizer({ deviations }: Flown, fullScale: number): Condition {
  return within(deviations.localizerFullScale, fullScale);
}

/** A needle within a share of full scale to both sides. */
export function within(needle: Float64Array, fullScale: number): Condition {
  return {
    holds: (i) => Math.abs(needle[i]!) <= fullScale,
    margin: (i) => fullScale - Math.abs(needle[i]!),
  };
}

/** Strictly: exactly full scale is within. */
export function beyondLocalizer({ deviations: { localizerFullScale } }: Flown): Condition {
  return {
    holds: (i) => Math.abs(localizerFullScale[i]!) > 1,
    margin: (i) => {
      const beyond = Math.abs(localizerFullScale[i]!) - 1;
      return beyond === 0 ? -Number.MIN_VALUE : beyond;
    },
  };
}

function trackWithin({ courseAngleDeg }: Flown, deg: number): Condition {
  return {
    holds: (i) => Math.abs(courseAngleDeg.at(i)) <= deg,
    margin: (i) => deg - Math.abs(courseAngleDeg.at(i)),
  };
}

/** The first moment of a stretch at which an aircraft settled on the localizer; null when it never did. */
export function firstEstablishedS(flown: Flown, stretch: Stretch): number | null {
  return firstHold(flown.track, stretch, establishing(flown), ESTABLISHED_S);
}

/** Establishment within a stretch; losses count until `untilS`, where the approach ended. */
export function findCapture(flown: Flown, stretch: Stretch, untilS: number): Capture {
  const lost = [beyondLocalizer(flown), beforeThreshold(flown)];
  const establishedS = firstEstablishedS(flown, stretch);
  const lostS: number[] = [];
  const reEstablishedS: number[] = [];
  let momentS = establishedS;
  while (momentS !== null) {
    const lossS = firstHold(flown.track, after(flown, stretch, momentS), lost, LOST_S);
    if (lossS === null || lossS >= untilS) break;
    lostS.push(lossS);
    momentS = firstEstablishedS(flown, after(flown, stretch, lossS));
    if (momentS !== null) reEstablishedS.push(momentS);
  }
  return { establishedS, lostS, reEstablishedS };
}

function establishing(flown: Flown): Condition[] {
  return [
    withinLocalizer(flown, ESTABLISHED_FULL_SCALE),
    trackWithin(flown, ESTABLISHED_DEG),
    beforeThreshold(flown),
  ];
}

/** The rest of a stretch from the first fix at or after a moment. */
export function after({ track }: Flown, { first, last }: Stretch, momentS: number): Stretch {
  return { first: Math.max(first, firstAtOrAfter(track.timeS, momentS)), last };
}

/** A minute within full scale and within 30° of the course: seen to have tried (design, section 7). */
const TRIED_DEG = 30;
const TRIED_S = 60;

export function triedForAMinute(flown: Flown, stretch: Stretch): boolean {
  const tried = [withinLocalizer(flown, 1), trackWithin(flown, TRIED_DEG), beforeThreshold(flown)];
  return firstHold(flown.track, stretch, tried, TRIED_S) !== null;
}

/** Whether the aircraft flew inbound, as a condition. */
export function inbound(flown: Flown): readonly Condition[] {
  return [trackWithin(flown, INBOUND_DEG), beforeThreshold(flown)];
}
