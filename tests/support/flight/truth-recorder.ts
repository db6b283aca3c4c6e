import { wrap360 } from '../../../core/units/units.ts';
import type { AircraftState } from './aircraft.ts';
import { indicatedAltitudeFt, trueOverIndicated } from './atmosphere.ts';
import { readBeam, type BeamReading, type BeamTruth } from './beam-truth.ts';
import type { Leg } from './cockpit.ts';
import type { FlightPlan } from './flight-plan.ts';
import type { BeamColumns, FlightFacts, FlightTruth, GoAround, TruthColumns } from './flight-truth.ts';
import type { WindNow } from './wind.ts';

interface Moment {
  readonly timeS: number;
  readonly state: AircraftState;
  readonly wind: WindNow;
}

interface LegSpan {
  readonly name: string;
  readonly goAround: boolean;
  readonly startS: number;
  readonly endS: number;
}

/** Collects a flight as it is flown and hands it over as columns and facts. */
export function truthRecorder(
  plan: FlightPlan,
  beam: BeamTruth,
): {
  beginLeg(leg: Leg, startS: number): void;
  endLeg(endS: number): void;
  moment(timeS: number, state: AircraftState, wind: WindNow): void;
  truth(): FlightTruth;
} {
  const moments: Moment[] = [];
  const legs: LegSpan[] = [];
  let open: { leg: Leg; startS: number } | null = null;
  return {
    beginLeg(leg, startS) {
      open = { leg, startS };
    },
    endLeg(endS) {
      if (open)
        legs.push({ name: open.leg.name, goAround: open.leg.goAround === true, startS: open.startS, endS });
    },
    moment(timeS, state, wind) {
      moments.push({ timeS, state, wind });
    },
    truth: () => ({
      plan,
      columns: columnsOf(plan, moments),
      beam: beamColumns(beam, moments),
      facts: factsOf(moments, legs),
    }),
  };
}

function columnsOf(plan: FlightPlan, moments: readonly Moment[]): TruthColumns {
  const column = (value: (moment: Moment) => number): Float64Array => columnOf(moments, value);
  const trueKt = ({ state }: Moment): number =>
    state.airspeedIndicatedKt * trueOverIndicated(plan.air, state.heightFt);
  return {
    timeS: column((m) => m.timeS),
    latDeg: column((m) => m.state.latDeg),
    lonDeg: column((m) => m.state.lonDeg),
    heightFt: column((m) => m.state.heightFt),
    indicatedFt: column((m) => indicatedAltitudeFt(plan.air, m.state.heightFt)),
    trackTrueDeg: column((m) => wrap360(degrees(Math.atan2(m.state.eastKt, m.state.northKt)))),
    groundspeedKt: column((m) => Math.hypot(m.state.eastKt, m.state.northKt)),
    airspeedIndicatedKt: column((m) => m.state.airspeedIndicatedKt),
    airspeedTrueKt: column(trueKt),
    verticalSpeedFpm: column((m) => m.state.verticalSpeedFpm),
    headingTrueDeg: column((m) => m.state.headingTrueDeg),
    bankDeg: column((m) => m.state.bankDeg),
    pitchDeg: column((m) => pitchDeg(m.state, trueKt(m))),
    flapDeg: column((m) => m.state.flapDeg),
    windEastKt: column((m) => m.wind.eastKt),
    windNorthKt: column((m) => m.wind.northKt),
    onGround: Uint8Array.from(moments, (m) => (m.state.onGround ? 1 : 0)),
  };
}

/** Climb angle plus the angle of attack that the speed needs: 2° at 100 kt, more when slower, less with flap. */
function pitchDeg(state: AircraftState, trueKt: number): number {
  if (state.onGround) return 0;
  const climbDeg = degrees(Math.atan2(state.climbFpm, trueKt * 101.27));
  const attackDeg = 9 * (75 / Math.max(50, state.airspeedIndicatedKt)) ** 2 - 3;
  return climbDeg + attackDeg - 0.1 * state.flapDeg;
}

function beamColumns(beam: BeamTruth, moments: readonly Moment[]): BeamColumns {
  const readings = moments.map(({ state }) => readBeam(beam, state.latDeg, state.lonDeg, state.heightFt));
  const column = (key: keyof BeamReading): Float64Array => columnOf(readings, (r) => r[key]);
  return {
    localizerDeg: column('localizerDeg'),
    localizerFullScale: column('localizerFullScale'),
    glidepathDeg: column('glidepathDeg'),
    glidepathFullScale: column('glidepathFullScale'),
    heightAboveGlidepathFt: column('heightAboveGlidepathFt'),
    distanceToThresholdNm: column('distanceToThresholdNm'),
    centrelineOffsetFt: column('centrelineOffsetFt'),
  };
}

/** As Float64Array.from, in a fraction of its time. */
function columnOf<Row>(rows: readonly Row[], value: (row: Row) => number): Float64Array {
  const column = new Float64Array(rows.length);
  for (let i = 0; i < rows.length; i++) column[i] = value(rows[i]!);
  return column;
}

function factsOf(moments: readonly Moment[], legs: readonly LegSpan[]): FlightFacts {
  const changes = (toGround: boolean): number[] =>
    moments
      .filter((m, i) => i > 0 && m.state.onGround === toGround && moments[i - 1]!.state.onGround !== toGround)
      .map((m) => m.timeS);
  return {
    legs: legs.map(({ name, startS, endS }) => ({ name, startS, endS })),
    touchdownsS: changes(true),
    liftOffsS: changes(false),
    goArounds: legs.filter((leg) => leg.goAround).map((leg) => goAroundFrom(moments, leg.startS)),
  };
}

/** The lowest of the minute after the decision. */
function goAroundFrom(moments: readonly Moment[], decidedS: number): GoAround {
  const minute = moments.filter((m) => m.timeS >= decidedS && m.timeS <= decidedS + 60);
  const lowest = minute.reduce((low, m) => (m.state.heightFt < low.state.heightFt ? m : low));
  return { decidedS, lowestS: lowest.timeS, lowestFt: lowest.state.heightFt };
}

function degrees(radians: number): number {
  return (radians * 180) / Math.PI;
}
