import { METRES_PER_FOOT, wrap360 } from '../../../core/units/units.ts';
import { ANTENNA_HEIGHT_FT, stepAircraft, type AircraftState, type Controls } from './aircraft.ts';
import { indicatedAltitudeFt, trueOverIndicated } from './atmosphere.ts';
import { beamTruth, pointFromThreshold, readBeam, type BeamReading, type BeamTruth } from './beam-truth.ts';
import type { Cockpit, Leg } from './cockpit.ts';
import type { FacilityFile } from './facility-file.ts';
import type { FlightPlan } from './flight-plan.ts';
import type { FlightTruth } from './flight-truth.ts';
import { seededRandom, wander } from './random.ts';
import { truthRecorder } from './truth-recorder.ts';
import { windyAir, type WindNow } from './wind.ts';

export const STEPS_PER_S = 10;
const STEP_S = 1 / STEPS_PER_S;
/** A plan whose leg never ends is a mistake of the test, not a flight. */
const LONGEST_LEG_S = 1500;

/** Flies a plan from its first leg to its last. The plan's name is the seed. */
export function fly(plan: FlightPlan): FlightTruth {
  const random = seededRandom(plan.name);
  const air = windyAir(plan.wind, random);
  const hand = unsteadyHand(plan, random.fork('hand'));
  const beams = new Map<FacilityFile, BeamTruth>();
  const beamOf = (facility: FacilityFile): BeamTruth => {
    const known = beams.get(facility) ?? beamTruth(facility);
    beams.set(facility, known);
    return known;
  };
  const home = plan.guide ?? plan.facility;
  const record = truthRecorder(plan, beamOf(plan.facility));
  let wind = air(plan.start.indicatedFt - beamOf(home).thresholdElevationFt, STEP_S);
  let state = initialState(plan, beamOf(home), wind);
  const beginS = Date.parse(plan.startUtc) / 1000;
  // Steps are counted, not times added: every time is then the nearest number to a whole tenth.
  let steps = 0;
  for (const leg of plan.legs) {
    const beam = beamOf(leg.guide ?? home);
    const pilot = pilotOf(leg, plan, beam);
    record.beginLeg(leg, beginS + steps / STEPS_PER_S);
    for (let step = 0; ; step++, steps++) {
      const timeS = beginS + steps / STEPS_PER_S;
      const cockpit = pilot.look(state, timeS, step);
      if (leg.until(cockpit)) break;
      if (step * STEP_S > LONGEST_LEG_S) throw new Error(`leg "${leg.name}" of "${plan.name}" never ends`);
      record.moment(timeS, state, wind);
      wind = air(state.heightFt - beam.thresholdElevationFt, STEP_S);
      const controls = hand(pilot.decide(cockpit), state);
      const surfaceFt = runwaySurfaceFt(beam, cockpit.now.distanceToThresholdNm);
      state = stepAircraft(plan.limits, plan.air, state, controls, wind, surfaceFt, STEP_S);
    }
    record.endLeg(beginS + steps / STEPS_PER_S);
  }
  record.moment(beginS + steps / STEPS_PER_S, state, wind);
  return record.truth();
}

function pilotOf(
  leg: Leg,
  plan: FlightPlan,
  beam: BeamTruth,
): { look(state: AircraftState, timeS: number, step: number): Cockpit; decide(cockpit: Cockpit): Controls } {
  const skill = { ...plan.skill, ...leg.skill };
  const readings: BeamReading[] = [];
  const delay = Math.round(skill.lateS / STEP_S);
  const lateral = leg.lateral();
  const vertical = leg.vertical();
  return {
    look(state, timeS, step) {
      const now = readBeam(beam, state.latDeg, state.lonDeg, state.heightFt);
      readings.push(now);
      return {
        timeS,
        legS: step / STEPS_PER_S,
        state,
        groundspeedKt: Math.hypot(state.eastKt, state.northKt),
        trackTrueDeg: wrap360((Math.atan2(state.eastKt, state.northKt) * 180) / Math.PI),
        indicatedFt: indicatedAltitudeFt(plan.air, state.heightFt),
        wheelsFt: state.heightFt - ANTENNA_HEIGHT_FT - runwaySurfaceFt(beam, now.distanceToThresholdNm),
        now,
        seen: readings[Math.max(0, step - delay)]!,
        beam,
        air: plan.air,
        wind: plan.wind,
        skill,
      };
    },
    decide(cockpit) {
      const { headingTrueDeg, turn } = lateral(cockpit);
      return {
        headingTrueDeg,
        turn,
        verticalSpeedFpm: vertical(cockpit),
        airspeedKt: leg.airspeedKt,
        flapDeg: leg.flapDeg ?? 0,
        bankLimitDeg: leg.bankLimitDeg ?? 20,
      };
    },
  };
}

/** Adds to what was decided what an unsteady hand makes of it; on the ground and in the flare it is left out. */
function unsteadyHand(
  plan: FlightPlan,
  random: ReturnType<typeof seededRandom>,
): (controls: Controls, state: AircraftState) => Controls {
  const { headingUnrestDeg, climbUnrestFpm, speedUnrestKt } = plan.skill;
  const aside = wander(random.fork('heading'), headingUnrestDeg, 14);
  const upward = wander(random.fork('climb'), climbUnrestFpm, 9);
  const faster = wander(random.fork('speed'), speedUnrestKt, 25);
  return (controls, state) => {
    const [asideDeg, upFpm, fasterKt] = [aside.step(STEP_S), upward.step(STEP_S), faster.step(STEP_S)];
    if (state.onGround || controls.verticalSpeedFpm > 0) return controls;
    const steady = controls.verticalSpeedFpm < -200 || controls.verticalSpeedFpm === 0 ? 1 : 0.4;
    const { headingTrueDeg, turn, verticalSpeedFpm, airspeedKt, flapDeg, bankLimitDeg } = controls;
    return {
      headingTrueDeg: headingTrueDeg + asideDeg,
      turn,
      verticalSpeedFpm: verticalSpeedFpm + steady * upFpm,
      airspeedKt: airspeedKt + fasterKt,
      flapDeg,
      bankLimitDeg,
    };
  };
}

function initialState(plan: FlightPlan, beam: BeamTruth, wind: WindNow): AircraftState {
  const { distanceNm, offsetFt, indicatedFt, rightOfCourseDeg, airspeedKt } = plan.start;
  const heightFt = heightAtIndicated(plan, indicatedFt);
  const headingTrueDeg = wrap360(beam.courseTrueDeg + rightOfCourseDeg);
  const trueKt = airspeedKt * trueOverIndicated(plan.air, heightFt);
  const along = (headingTrueDeg * Math.PI) / 180;
  return {
    ...pointFromThreshold(beam, distanceNm, offsetFt, heightFt),
    heightFt,
    headingTrueDeg,
    bankDeg: 0,
    airspeedIndicatedKt: airspeedKt,
    climbFpm: 0,
    verticalSpeedFpm: wind.upFpm,
    eastKt: trueKt * Math.sin(along) + wind.eastKt,
    northKt: trueKt * Math.cos(along) + wind.northKt,
    onGround: false,
    flapDeg: 0,
  };
}

function heightAtIndicated(plan: FlightPlan, indicatedFt: number): number {
  let heightFt = indicatedFt;
  for (let round = 0; round < 20; round++) heightFt += indicatedFt - indicatedAltitudeFt(plan.air, heightFt);
  return heightFt;
}

/** The runway rises in a straight line from threshold to far end, and is level beyond both. */
function runwaySurfaceFt(beam: BeamTruth, distanceToThresholdNm: number): number {
  const alongFt = (-distanceToThresholdNm * 1852) / METRES_PER_FOOT;
  const share = Math.min(1, Math.max(0, alongFt / beam.runwayLengthFt));
  return beam.thresholdElevationFt + share * (beam.farEndElevationFt - beam.thresholdElevationFt);
}
