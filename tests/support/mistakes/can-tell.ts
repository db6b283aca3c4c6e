import { ESTIMATED_AIRSPEED_ERROR_KT } from '../../../core/approach/estimated-airspeed.ts';
import { DEFAULT_STANDARD } from '../../../core/standard/standards.ts';
import { rollErrorFt } from '../../../core/track/position-error.ts';
import { RECEIVER_CLASSES } from '../../../core/track/receiver.ts';
import { FEET_PER_NM } from '../../../core/units/units.ts';
import { beamTruth } from '../flight/beam-truth.ts';
import { fly } from '../flight/fly.ts';
import type { FlightTruth } from '../flight/flight-truth.ts';
import { FINAL_KT, type MistakenFlight } from './practice-flight.ts';

/**
 * Of mistakes that a phone's log often cannot prove: whether it can of this flight, had the receiver been right. Told
 * from what was flown and from how far off the program says that a phone is, and from nothing that it finds: what was
 * flown has to be beyond the limit by more than that. (With the error that there is, half of those just beyond are
 * told.)
 */
const CAN_TELL: Readonly<Record<string, (truth: FlightTruth) => boolean>> = {
  'unstable-and-continued': isBeyondAtGate,
  'missed-late': isBegunSurelyLate,
  'rate-not-held': isSurelyOffThePath,
  // Nothing of it is recorded.
  'speed-decaying': () => false,
  'fast-at-gate': isFastBeyondTheEstimate,
  'short-landing': isBrakingByThen,
  'went-around-in-time': isBeyondWhereDecided,
};

/** Null of a mistake that a phone can tell of any flight. */
export function canTell(id: string, { plan }: MistakenFlight): boolean | null {
  return CAN_TELL[id]?.(fly(plan)) ?? null;
}

const { verticalFt, timeConstantS } = RECEIVER_CLASSES.phone;

/** 95 % half-width of a phone's height: the class, and less the nearer to the roll of a landing (design, section 10). */
function heightHalfWidthFt({ columns, facts }: FlightTruth, i: number): number {
  const [touchdownS] = facts.touchdownsS;
  if (touchdownS === undefined) return verticalFt;
  const departed = 1 - Math.exp(-Math.abs(touchdownS - columns.timeS[i]!) / timeConstantS);
  return Math.min(verticalFt, Math.hypot(rollErrorFt(true), verticalFt * Math.sqrt(departed)));
}

/** How far the glidepath needle was beyond a share of its scale for sure, at a moment; negative where it was not. */
function surelyBeyond(truth: FlightTruth, i: number, fullScale: number): number {
  const { glideAngleDeg, glidepathFullScaleDeg } = beamTruth(truth.plan.facility);
  const slope = Math.tan((glideAngleDeg * Math.PI) / 180);
  const { thresholdCrossingHeightFt } = truth.plan.facility.glidepath;
  const awayFt = truth.beam.distanceToThresholdNm[i]! * FEET_PER_NM + thresholdCrossingHeightFt / slope;
  const scaleFt = (awayFt * glidepathFullScaleDeg * Math.PI) / 180;
  const needle = Math.abs(truth.beam.glidepathFullScale[i]!);
  return needle - heightHalfWidthFt(truth, i) / scaleFt - fullScale;
}

/** The first moment on the approach at which the aircraft was no higher than so far above the touchdown zone. */
function downTo({ columns, beam, plan }: FlightTruth, aboveFt: number): number {
  const { touchdownZoneElevationFt } = plan.facility.runway;
  return columns.heightFt.findIndex(
    (ft, i) => ft - touchdownZoneElevationFt <= aboveFt && beam.distanceToThresholdNm[i]! > 0,
  );
}

const GATE_FULL_SCALE = DEFAULT_STANDARD.gates.glidepath!.upper!;

function isBeyondAtGate(truth: FlightTruth): boolean {
  return surelyBeyond(truth, downTo(truth, 500), GATE_FULL_SCALE) > 0;
}

/** Where the decision was made, which is when it was answered. */
function isBeyondWhereDecided(truth: FlightTruth): boolean {
  return surelyBeyond(truth, decidedAt(truth), GATE_FULL_SCALE) > 0;
}

/** So long it takes until another rate shows. */
const CHANGED_S = 15;

/** Beyond half scale, where a fault of where a needle stood begins, while the one rate was held. */
function isSurelyOffThePath(truth: FlightTruth): boolean {
  const { startS, endS } = truth.facts.legs.find(({ name }) => name === 'one rate')!;
  const { timeS } = truth.columns;
  return timeS.some((s, i) => s >= startS && s <= endS + CHANGED_S && surelyBeyond(truth, i, 0.5) > 0);
}

/** Lower than three seconds of the path's sink and all of the error below decision altitude. */
function isBegunSurelyLate(truth: FlightTruth): boolean {
  const i = decidedAt(truth);
  const { decisionAltitudeFt } = truth.plan.facility.minimums;
  const slope = Math.tan((beamTruth(truth.plan.facility).glideAngleDeg * Math.PI) / 180);
  const allowedFt = 3 * ((truth.columns.groundspeedKt[i]! * FEET_PER_NM) / 3600) * slope;
  return decisionAltitudeFt - truth.columns.heightFt[i]! > allowedFt + verticalFt;
}

function decidedAt({ columns, facts }: FlightTruth): number {
  return columns.timeS.findIndex((s) => s >= facts.goArounds[0]!.decidedS);
}

function isFastBeyondTheEstimate(truth: FlightTruth): boolean {
  const { upper } = DEFAULT_STANDARD.gates.airspeed!;
  return [1000, 500].some((aboveFt) => {
    const overKt = truth.columns.airspeedIndicatedKt[downTo(truth, aboveFt)]! - FINAL_KT;
    return overKt > upper! + ESTIMATED_AIRSPEED_ERROR_KT;
  });
}

/** Where heights depart by more than a flare, the wheels are told by the braking: that has to be 200 ft before 500. */
function isBrakingByThen({ columns, beam, facts }: FlightTruth): boolean {
  const { timeS, groundspeedKt } = columns;
  const braking = timeS.findIndex(
    (s, i) => s >= facts.touchdownsS[0]! && groundspeedKt[i - 20]! - groundspeedKt[i + 20]! >= 4,
  );
  return -beam.distanceToThresholdNm[braking]! * FEET_PER_NM + 200 < 500;
}
