import { METRES_PER_FOOT, wrap360 } from '../../../core/units/units.ts';
import { altimeter, NO_LAG, type AltimeterClass } from '../flight/altimeter-error.ts';
import { temperatureC } from '../flight/atmosphere.ts';
import { longitudeInRange, radiiM } from '../flight/ellipsoid.ts';
import { STEPS_PER_S } from '../flight/fly.ts';
import type { FlightTruth } from '../flight/flight-truth.ts';
import { gnssErrors, NO_ERROR, standardDeviationsM, type GnssClass } from '../flight/gnss-error.ts';
import { seededRandom } from '../flight/random.ts';

/** One fix as an aircraft's own equipment knows it: the truth with the errors of the receiver and the altimeter. */
export interface LoggedFix {
  readonly timeS: number;
  readonly latDeg: number;
  readonly lonDeg: number;
  /** Above mean sea level, from the receiver. */
  readonly gnssAltitudeFt: number;
  readonly indicatedAltitudeFt: number;
  readonly pressureAltitudeFt: number;
  readonly groundspeedKt: number;
  readonly trackTrueDeg: number;
  readonly headingMagneticDeg: number;
  readonly airspeedIndicatedKt: number;
  readonly verticalSpeedFpm: number;
  readonly bankDeg: number;
  readonly pitchDeg: number;
  readonly flapDeg: number;
  readonly outsideTemperatureC: number;
  readonly altimeterSettingHpa: number;
  /** What the receiver says of itself: the radius and the half-width that hold 68 %. */
  readonly horizontalAccuracyM: number;
  readonly verticalAccuracyM: number;
  /** Needles as fractions of full scale, from the true position. */
  readonly localizerFullScale: number;
  readonly glidepathFullScale: number;
}

/** The receiver, the altimeter and the pace of a recorder. */
export interface Recorder {
  /** 10, 5, 2, 1, 0.5 or 0.2: whole steps of the truth. */
  readonly rateHz: number;
  readonly gnss: GnssClass;
  readonly altimeter: AltimeterClass;
  /** Names the chance of this recorder, so that one flight can be recorded twice with other errors. */
  readonly seed?: string;
  /** Height of the receiver's bias, as phones have. */
  readonly heightBiasFt?: number;
}

/** Radius over standard deviation per axis that holds 68 % in two dimensions: √(−2 ln 0.32) (computed). */
const RADIUS_68 = Math.sqrt(-2 * Math.log(0.32));

export const EXACT: Recorder = { rateHz: 10, gnss: NO_ERROR, altimeter: NO_LAG };

/** Records a flight. With EXACT, every value is the truth's own. */
export function recordFlight(truth: FlightTruth, recorder: Recorder): LoggedFix[] {
  const random = seededRandom(`${truth.plan.name}/${recorder.seed ?? 'recorder'}`);
  const errors = gnssErrors(recorder.gnss, random);
  const shown = altimeter(recorder.altimeter);
  const stride = Math.round(STEPS_PER_S / recorder.rateHz);
  const fixes: LoggedFix[] = [];
  for (let i = 0; i < truth.columns.timeS.length; i++) {
    const error = errors(1 / STEPS_PER_S);
    const indicatedFt = shown(truth.columns.indicatedFt[i]!, 1 / STEPS_PER_S);
    if (i % stride === 0) fixes.push(fixAt(truth, i, recorder, error, indicatedFt));
  }
  return fixes;
}

function fixAt(
  truth: FlightTruth,
  i: number,
  recorder: Recorder,
  error: { eastM: number; northM: number; upM: number },
  indicatedAltitudeFt: number,
): LoggedFix {
  const { columns, beam, plan } = truth;
  const at = (name: Exclude<keyof typeof columns, 'onGround'>): number => columns[name][i]!;
  const { meridianM, primeVerticalM } = radiiM(at('latDeg'));
  const perDegree = Math.PI / 180;
  const accuracy = standardDeviationsM(recorder.gnss);
  const eastPerDegreeM = primeVerticalM * Math.cos(at('latDeg') * perDegree) * perDegree;
  return {
    timeS: at('timeS'),
    latDeg: at('latDeg') + error.northM / (meridianM * perDegree),
    lonDeg: longitudeInRange(at('lonDeg') + error.eastM / eastPerDegreeM),
    gnssAltitudeFt: at('heightFt') + error.upM / METRES_PER_FOOT + (recorder.heightBiasFt ?? 0),
    indicatedAltitudeFt,
    pressureAltitudeFt: indicatedAltitudeFt + (1013.25 - plan.air.altimeterSettingHpa) * 27.31,
    groundspeedKt: at('groundspeedKt'),
    trackTrueDeg: at('trackTrueDeg'),
    headingMagneticDeg: wrap360(at('headingTrueDeg') - plan.facility.magneticVariationDeg),
    airspeedIndicatedKt: at('airspeedIndicatedKt'),
    verticalSpeedFpm: at('verticalSpeedFpm'),
    bankDeg: at('bankDeg'),
    pitchDeg: at('pitchDeg'),
    flapDeg: at('flapDeg'),
    outsideTemperatureC: temperatureC(plan.air, at('heightFt')),
    altimeterSettingHpa: plan.air.altimeterSettingHpa,
    horizontalAccuracyM: accuracy.perAxisM * RADIUS_68,
    verticalAccuracyM: accuracy.upM,
    localizerFullScale: beam.localizerFullScale[i]!,
    glidepathFullScale: beam.glidepathFullScale[i]!,
  };
}
