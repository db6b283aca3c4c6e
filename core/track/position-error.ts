import { FEET_PER_NM, METRES_PER_FOOT } from '../units/units.ts';
import { heightStepFt, positionStepDeg } from './coarseness.ts';
import { RECEIVER_CLASSES } from './receiver.ts';
import type { AltitudeSource, Track } from './track.ts';

/** Where a half-width comes from. */
export type ErrorSource = 'protection' | 'accuracy' | 'dilution' | 'class' | 'unnamed' | 'altimeter' | 'roll';

/**
 * How far the fixes of a track may be off: 95 % half-widths, feet, by fix. The part that changes in flight is of first
 * order, so that errors a few seconds apart are nearly one.
 */
export interface PositionError {
  readonly sideFrom: ErrorSource;
  readonly heightFrom: ErrorSource;
  readonly timeConstantS: number;
  /** To one side, in any direction on the ground. */
  readonly sideFt: (i: number) => number;
  /** Of the beam's height. */
  readonly heightFt: (i: number) => number;
  /** Of the altitude that gates and decision altitude are judged by. */
  readonly decidingFt: (i: number) => number;
  /** Of the height, as it departs from itself in flight: what a sink rate is told by. */
  readonly driftFt: (i: number) => number;
  /** Half of the step that heights are rounded to, feet; contained in the others. */
  readonly roundingFt: number;
  /** Of a vertical speed that the log recorded, ft/min. */
  readonly recordedSinkFpm: number;
}

const zero = () => 0;

/** Of fixes that are what they say. */
export const NO_ERROR: PositionError = {
  sideFrom: 'class',
  heightFrom: 'class',
  timeConstantS: Infinity,
  sideFt: zero,
  heightFt: zero,
  decidingFt: zero,
  driftFt: zero,
  roundingFt: 0,
  recordedSinkFpm: 0,
};

/** Standard deviations to either side that hold 95 % of a normal error, and radii in two dimensions (computed). */
const HALF_WIDTH_95 = 1.959964;
const RADIUS_95 = Math.sqrt(-2 * Math.log(0.05));
const RADIUS_68 = Math.sqrt(-2 * Math.log(0.32));
const HALF_WIDTH_68 = 0.994458;
/** Standard deviations in a protection level: 6 to the side, 5.33 in height (RTCA DO-229, from memory). */
const PROTECTION = { horizontal: 6, vertical: 5.33 };
/** Dilution of precision at which a class holds its published figure (ours). */
const USUAL_DILUTION = { horizontal: 1, vertical: 1.6 };
/** Smaller than this no column is believed, feet (ours): a receiver that says 0 does not know. */
const LEAST_FT = 1;

/** Of an altimeter set to the aerodrome's pressure: instrument and place of the static port (ours). */
const ALTIMETER_FT = 50;
/**
 * Its height above the aerodrome is off by 4 % for 10 °C (ICAO Doc 8168, cold-temperature error, second-hand): a
 * temperature not stated lies within 20 °C of the standard, a stated one is right to 5 °C all the way up (ours).
 */
const SHARE_OF_HEIGHT = { unknown: 0.08, stated: 0.02 };
/** Pressure lies within 25 hPa of the standard's (ours), at 27.3 ft each (ISA). */
const UNSET_FT = 680;
/** 0.2 m/s, 95 % (GPS SPS Performance Standard, 5th edition (2020), table 3.8-3, second-hand). */
const RECORDED_SINK_FPM = 40;
/** A setting is known to a whole hectopascal, or half of one. */
const SETTING_FT = 14;

type Half = (i: number) => number;

/** How far the fixes of a track may be off, at an aerodrome of this elevation. */
export function positionErrorOf(track: Track, elevationFt: number): PositionError {
  const side = sideError(track);
  const height = heightError(track, elevationFt);
  const stepDeg = positionStepDeg(track.latDeg, track.lonDeg);
  const roundingFt = heightStepFt(loggedHeights(track)) / 2;
  const heightFt = foundWidened(height, roundingFt);
  return {
    sideFrom: side.from,
    heightFrom: height.from,
    timeConstantS: RECEIVER_CLASSES[track.receiver.kind].timeConstantS,
    sideFt: foundWidened(side, (stepDeg / 2) * MINUTES * FEET_PER_NM),
    heightFt,
    decidingFt: decidingError(track, heightFt),
    // An altimeter is off by much the same from one second to the next.
    driftFt: isBySatellite(track) ? height.half : zero,
    roundingFt,
    recordedSinkFpm: RECORDED_SINK_FPM,
  };
}

/** Minutes of arc in a degree, of latitude a nautical mile each. */
const MINUTES = 60;

/** The same with what else may be off. */
function widened(half: Half, byFt: number): Half {
  return byFt === 0 ? half : (i) => Math.hypot(half(i), byFt);
}

/** The same of what was found: where it is one for all fixes, so is what it is widened to. */
function foundWidened({ half, steadyFt }: Found, byFt: number): Half {
  if (steadyFt === null) return widened(half, byFt);
  const widenedFt = Math.hypot(steadyFt, byFt);
  return () => widenedFt;
}

/** The beam's heights as the log wrote them, before any correction: only there a step shows. */
function loggedHeights({ altitudeSource, altitudeFt, recorded }: Track): Float64Array {
  const logged = {
    geometric: recorded.altitudeGeometricFt,
    'ellipsoid-less-geoid': recorded.altitudeEllipsoidFt,
    unnamed: recorded.altitudeUnnamedFt,
    indicated: recorded.altitudeIndicatedFt ?? recorded.altitudePressureFt,
    pressure: recorded.altitudePressureFt,
    transponder: recorded.altitudeTransponderFt,
  }[altitudeSource];
  return logged ?? altitudeFt;
}

interface Found {
  readonly from: ErrorSource;
  readonly half: Half;
  /** Where it is the same at all fixes. */
  readonly steadyFt: number | null;
}

function steady(from: ErrorSource, ft: number): Found {
  return { from, half: () => ft, steadyFt: ft };
}

function sideError({ recorded, receiver }: Track): Found {
  const { horizontalFt } = RECEIVER_CLASSES[receiver.kind];
  // A radius in two dimensions, told as a half-width in one.
  const inClass = (horizontalFt * HALF_WIDTH_95) / RADIUS_95;
  const { horizontalProtectionM, horizontalAccuracyM, hdop } = recorded;
  if (horizontalProtectionM)
    return column('protection', horizontalProtectionM, HALF_WIDTH_95 / PROTECTION.horizontal, inClass);
  const radius = receiver.accuracyShare === 0.68 ? RADIUS_68 : RADIUS_95;
  if (horizontalAccuracyM) return column('accuracy', horizontalAccuracyM, HALF_WIDTH_95 / radius, inClass);
  if (hdop) return dilution(hdop, USUAL_DILUTION.horizontal, inClass);
  return steady('class', inClass);
}

const BY_SATELLITE: ReadonlySet<AltitudeSource> = new Set(['geometric', 'ellipsoid-less-geoid', 'unnamed']);

/** Whether the beam's height is a satellite receiver's, whose bias a roll shows; else it is an altimeter's. */
export function isBySatellite({ altitudeSource }: Pick<Track, 'altitudeSource'>): boolean {
  return BY_SATELLITE.has(altitudeSource);
}

function heightError(track: Track, elevationFt: number): Found {
  if (!isBySatellite(track))
    return { from: 'altimeter', half: altimeterError(track, elevationFt), steadyFt: null };
  const { recorded, receiver } = track;
  const isUnnamed = track.altitudeSource === 'unnamed' && receiver.kind !== 'phone';
  // A kind that is not named may be another than it is taken for, whatever the receiver.
  const inClass = RECEIVER_CLASSES[isUnnamed ? 'phone' : receiver.kind].verticalFt;
  const { verticalProtectionM, verticalAccuracyM, vdop } = recorded;
  if (verticalProtectionM)
    return column('protection', verticalProtectionM, HALF_WIDTH_95 / PROTECTION.vertical, inClass);
  const halfWidth = receiver.accuracyShare === 0.68 ? HALF_WIDTH_68 : HALF_WIDTH_95;
  if (verticalAccuracyM) return column('accuracy', verticalAccuracyM, HALF_WIDTH_95 / halfWidth, inClass);
  if (vdop) return dilution(vdop, USUAL_DILUTION.vertical, inClass);
  return steady(isUnnamed ? 'unnamed' : 'class', inClass);
}

/** A column in metres, widened to 95 %; the class where a row lacks it. */
function column(from: ErrorSource, valuesM: Float64Array, to95: number, inClass: number): Found {
  const half: Half = (i) => {
    const valueFt = (valuesM[i]! / METRES_PER_FOOT) * to95;
    return valueFt >= LEAST_FT ? valueFt : inClass;
  };
  return { from, half, steadyFt: null };
}

function dilution(values: Float64Array, usual: number, inClass: number): Found {
  const half: Half = (i) => (values[i]! > 0 ? (values[i]! / usual) * inClass : inClass);
  return { from: 'dilution', half, steadyFt: null };
}

function altimeterError({ altitudeFt, altitudeSource, temperatureKnown }: Track, elevationFt: number): Half {
  const constantFt = altitudeSource === 'indicated' ? ALTIMETER_FT : Math.hypot(ALTIMETER_FT, UNSET_FT);
  const share = temperatureKnown ? SHARE_OF_HEIGHT.stated : SHARE_OF_HEIGHT.unknown;
  return (i) => Math.hypot(constantFt, share * (altitudeFt[i]! - elevationFt));
}

/** What the altimeter showed is what the pilot flew by, and so has no error here but what the log rounded. */
function decidingError({ altitudeIndicatedFt, recorded }: Track, heightFt: Half): Half {
  if (!altitudeIndicatedFt) return heightFt;
  const { altitudeIndicatedFt: shown, altitudePressureFt } = recorded;
  const roundingFt = heightStepFt(shown ?? altitudePressureFt ?? altitudeIndicatedFt) / 2;
  if (shown && roundingFt === 0) return zero;
  return widened(shown ? zero : () => SETTING_FT, roundingFt);
}

/** Of a height from which a roll's bias was taken off, at the roll (design, section 10); the antenna's, the runway's. */
const AT_ROLL_FT = 13;
/** More where the runway's far end has no elevation of its own (design, section 10). */
const SLOPE_UNKNOWN_FT = 20;
/** From so long before the roll it says no more than the class does (design, section 10). */
const ROLL_TELLS_S = 600;

/**
 * The same once the bias that rolls showed is taken off: narrow at a roll, as wide as before ten minutes away, and
 * never wider. Half of the variance is taken for constant, and what else there is departs as the first order does.
 */
export function calibrated(
  error: PositionError,
  timeS: Float64Array,
  rollS: readonly number[],
  farEndKnown: boolean,
): PositionError {
  const atRollFt = rollErrorFt(farEndKnown);
  const heightFt: Half = (i) => {
    const before = error.heightFt(i);
    const awayS = Math.min(...rollS.map((s) => Math.abs(s - timeS[i]!)));
    if (awayS >= ROLL_TELLS_S) return before;
    const departed = 1 - Math.exp(-awayS / error.timeConstantS);
    return Math.min(before, Math.hypot(atRollFt, error.roundingFt, before * Math.sqrt(departed)));
  };
  const decidingFt = error.decidingFt === error.heightFt ? heightFt : error.decidingFt;
  return { ...error, heightFrom: 'roll', heightFt, decidingFt };
}

/** Of a height bias as a roll shows it. */
export function rollErrorFt(farEndKnown: boolean): number {
  return farEndKnown ? AT_ROLL_FT : Math.hypot(AT_ROLL_FT, SLOPE_UNKNOWN_FT);
}

/** The same where a roll shows heights that are farther off than that, and nothing is taken off them. */
export function contradicted(error: PositionError, biasFt: number): PositionError {
  const heightFt = widened(error.heightFt, biasFt);
  return {
    ...error,
    heightFt,
    decidingFt: error.decidingFt === error.heightFt ? heightFt : error.decidingFt,
  };
}

/** Seconds that a slope is fitted over, to the half-width of the slope, ft/min, of heights with a first-order error. */
export function sinkErrorFpm(error: PositionError, i: number, fittedS: number): number {
  // A line fitted over T to a walk that gains q a second: variance of its slope 6 q ÷ 5 T; q = 2 σ² ÷ τ, σ² half of all.
  const perSecond = Math.sqrt(6 / (5 * error.timeConstantS * fittedS));
  // Off by r at most, a slope is off by 3 r ÷ T at most: one step in the middle of the line.
  const ofSteps = (3 * error.roundingFt) / fittedS;
  return Math.hypot(error.driftFt(i) * perSecond, ofSteps) * 60;
}
