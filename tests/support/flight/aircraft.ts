import { METRES_PER_FOOT, METRES_PER_NM, wrap180, wrap360 } from '../../../core/units/units.ts';
import { trueOverIndicated, type Atmosphere } from './atmosphere.ts';
import { longitudeInRange, radiiM } from './ellipsoid.ts';
import type { WindNow } from './wind.ts';

const RADIANS = Math.PI / 180;
const GRAVITY_KT_PER_S = 9.80665 * (3600 / METRES_PER_NM);

/** What an aircraft can do; nothing in a flight goes beyond it. */
export interface AircraftLimits {
  readonly bankDeg: number;
  readonly rollRateDegPerS: number;
  readonly accelerationKtPerS: number;
  readonly decelerationKtPerS: number;
  readonly climbFpm: number;
  readonly sinkFpm: number;
  /** How fast the vertical speed itself can change. */
  readonly pitchRateFpmPerS: number;
  readonly liftOffKt: number;
  readonly brakingKtPerS: number;
}

/** A light single as schools fly them; round figures of our own. */
export const TRAINER: AircraftLimits = {
  bankDeg: 30,
  rollRateDegPerS: 12,
  accelerationKtPerS: 1.5,
  decelerationKtPerS: 1.2,
  climbFpm: 800,
  sinkFpm: 1500,
  pitchRateFpmPerS: 300,
  liftOffKt: 58,
  brakingKtPerS: 3,
};

/** What the pilot asks of the aircraft. */
export interface Controls {
  readonly headingTrueDeg: number;
  /** Which way to turn when the new heading is far off; the shorter way unless given. */
  readonly turn: 'left' | 'right' | undefined;
  readonly bankLimitDeg: number;
  readonly verticalSpeedFpm: number;
  readonly airspeedKt: number;
  readonly flapDeg: number;
}

/** The antenna's position and motion; on the ground the antenna stands ANTENNA_HEIGHT_FT above the surface. */
export interface AircraftState {
  readonly latDeg: number;
  readonly lonDeg: number;
  readonly heightFt: number;
  readonly headingTrueDeg: number;
  readonly bankDeg: number;
  readonly airspeedIndicatedKt: number;
  /** Through the air; the rise of the air itself is not in it. */
  readonly climbFpm: number;
  /** Over the ground, the rise of the air included. */
  readonly verticalSpeedFpm: number;
  readonly eastKt: number;
  readonly northKt: number;
  readonly onGround: boolean;
  readonly flapDeg: number;
}

/** What a step changes by itself; place, height and flap follow from it. */
type Motion = Omit<AircraftState, 'latDeg' | 'lonDeg' | 'heightFt' | 'flapDeg'>;

export const ANTENNA_HEIGHT_FT = 6;

/** One step of a point mass: first-order responses within the limits, moved over the ellipsoid by its mean velocity. */
export function stepAircraft(
  limits: AircraftLimits,
  air: Atmosphere,
  before: AircraftState,
  controls: Controls,
  wind: WindNow,
  surfaceFt: number,
  stepS: number,
): AircraftState {
  const moved = before.onGround
    ? roll(limits, before, controls, wind, stepS)
    : fly(limits, air, before, controls, wind, stepS);
  const { latDeg, lonDeg } = move(before, moved, stepS);
  const { headingTrueDeg, bankDeg, airspeedIndicatedKt, eastKt, northKt } = moved;
  const restFt = surfaceFt + ANTENNA_HEIGHT_FT;
  const risenFt = before.heightFt + ((before.verticalSpeedFpm + moved.verticalSpeedFpm) / 120) * stepS;
  const rolls = before.onGround && moved.onGround;
  const touchesDown = !rolls && risenFt <= restFt && controls.verticalSpeedFpm <= 0;
  // Key by key: a spread takes several times as long, and this is done for every tenth of a second of every flight.
  return {
    latDeg,
    lonDeg,
    heightFt: rolls || touchesDown ? restFt : risenFt,
    headingTrueDeg,
    bankDeg,
    airspeedIndicatedKt,
    climbFpm: touchesDown ? 0 : moved.climbFpm,
    verticalSpeedFpm: touchesDown ? 0 : moved.verticalSpeedFpm,
    eastKt,
    northKt,
    onGround: touchesDown || moved.onGround,
    flapDeg: towards(before.flapDeg, controls.flapDeg, 3 * stepS),
  };
}

function fly(
  limits: AircraftLimits,
  air: Atmosphere,
  before: AircraftState,
  controls: Controls,
  wind: WindNow,
  stepS: number,
): Motion {
  const trueAirspeedKt = before.airspeedIndicatedKt * trueOverIndicated(air, before.heightFt);
  const bankLimitDeg = Math.min(limits.bankDeg, controls.bankLimitDeg);
  const wantedBankDeg = clamp(headingError(before.headingTrueDeg, controls), bankLimitDeg);
  const bankRate = clamp((wantedBankDeg - before.bankDeg) / 0.8, limits.rollRateDegPerS);
  const bankDeg = before.bankDeg + bankRate * stepS;
  const meanBank = ((before.bankDeg + bankDeg) / 2) * RADIANS;
  const turnDegPerS = (GRAVITY_KT_PER_S * Math.tan(meanBank)) / trueAirspeedKt / RADIANS;
  const headingTrueDeg = wrap360(before.headingTrueDeg + turnDegPerS * stepS);
  const wantedFpm = Math.max(-limits.sinkFpm, Math.min(limits.climbFpm, controls.verticalSpeedFpm));
  const climbRate = clamp((wantedFpm - before.climbFpm) / 1.5, limits.pitchRateFpmPerS);
  const climbFpm = before.climbFpm + climbRate * stepS;
  const speedRate = Math.max(
    -limits.decelerationKtPerS,
    Math.min(limits.accelerationKtPerS, (controls.airspeedKt - before.airspeedIndicatedKt) / 4),
  );
  const airspeedIndicatedKt = before.airspeedIndicatedKt + speedRate * stepS;
  const levelKt = airspeedIndicatedKt * trueOverIndicated(air, before.heightFt);
  return {
    headingTrueDeg,
    bankDeg,
    airspeedIndicatedKt,
    climbFpm,
    verticalSpeedFpm: climbFpm + wind.upFpm,
    eastKt: levelKt * Math.sin(headingTrueDeg * RADIANS) + wind.eastKt,
    northKt: levelKt * Math.cos(headingTrueDeg * RADIANS) + wind.northKt,
    onGround: false,
  };
}

/** On wheels: the nose wheel steers the track, the nose swings onto it, and the wind is felt by the airspeed only. */
function roll(
  limits: AircraftLimits,
  before: AircraftState,
  controls: Controls,
  wind: WindNow,
  stepS: number,
): Motion {
  const groundspeedKt = Math.hypot(before.eastKt, before.northKt);
  const track =
    groundspeedKt > 0.5 ? Math.atan2(before.eastKt, before.northKt) / RADIANS : before.headingTrueDeg;
  const turnDegPerS = clamp(headingError(track, controls), groundspeedKt > 25 ? 3 : 12);
  const trackDeg = track + (groundspeedKt > 0.5 ? turnDegPerS * stepS : 0);
  const [sin, cos] = [Math.sin(trackDeg * RADIANS), Math.cos(trackDeg * RADIANS)];
  const headwindKt = -(wind.eastKt * sin + wind.northKt * cos);
  const takesOff = controls.verticalSpeedFpm > 0;
  // Taxying and braking, the speed asked for is that of the wheels.
  const wantedKt = takesOff ? controls.airspeedKt - headwindKt : controls.airspeedKt;
  const faster = Math.max(
    -limits.brakingKtPerS,
    Math.min(limits.accelerationKtPerS * 1.6, (wantedKt - groundspeedKt) / 2),
  );
  const speedKt = Math.max(0, groundspeedKt + faster * stepS);
  const airspeedIndicatedKt = Math.max(0, speedKt + headwindKt);
  const swingDeg = clamp(wrap180(trackDeg - before.headingTrueDeg), 8 * stepS);
  return {
    headingTrueDeg: wrap360(before.headingTrueDeg + swingDeg),
    bankDeg: towards(before.bankDeg, 0, limits.rollRateDegPerS * stepS),
    airspeedIndicatedKt,
    climbFpm: 0,
    verticalSpeedFpm: 0,
    eastKt: speedKt * sin,
    northKt: speedKt * cos,
    onGround: !takesOff || airspeedIndicatedKt < limits.liftOffKt,
  };
}

/** Degrees still to turn, right positive; a turn the long way round is kept to until it is nearly done. */
function headingError(fromDeg: number, controls: Controls): number {
  const shorter = wrap180(controls.headingTrueDeg - fromDeg);
  if (controls.turn === 'right' && shorter < -30) return shorter + 360;
  if (controls.turn === 'left' && shorter > 30) return shorter - 360;
  return shorter;
}

function move(before: AircraftState, after: Motion, stepS: number): { latDeg: number; lonDeg: number } {
  const { meridianM, primeVerticalM } = radiiM(before.latDeg);
  const heightM = before.heightFt * METRES_PER_FOOT;
  const seconds = (stepS * METRES_PER_NM) / 3600;
  const northM = ((before.northKt + after.northKt) / 2) * seconds;
  const eastM = ((before.eastKt + after.eastKt) / 2) * seconds;
  const parallelM = (primeVerticalM + heightM) * Math.cos(before.latDeg * RADIANS);
  return {
    latDeg: before.latDeg + northM / (meridianM + heightM) / RADIANS,
    lonDeg: longitudeInRange(before.lonDeg + eastM / parallelM / RADIANS),
  };
}

function clamp(value: number, limit: number): number {
  return Math.max(-limit, Math.min(limit, value));
}

function towards(value: number, goal: number, step: number): number {
  return value + clamp(goal - value, step);
}
