import { METRES_PER_FOOT } from '../../../core/units/units.ts';
import { scene } from '../scenarios/scene.ts';
import type { AircraftState } from './aircraft.ts';
import { beamTruth, pointFromThreshold, readBeam, type BeamTruth } from './beam-truth.ts';
import { earthCentred, frameAt, seenFrom, type Vector } from './ellipsoid.ts';
import type { FacilityFile } from './facility-file.ts';
import type { FlightTruth } from './flight-truth.ts';
import { STEPS_PER_S } from './fly.ts';
import { truthRecorder } from './truth-recorder.ts';
import { CALM } from './wind.ts';

/** A moment of a drawn flight, which its needles are given for. */
interface DrawnMoment {
  /** Since the flight began. */
  readonly timeS: number;
  readonly distanceNm: number;
}

/**
 * A flight that is drawn, not flown: its needles are exact functions, so that a test knows to the tenth of a second when
 * each limit is crossed. No aircraft could fly some of them. It comes straight in at one speed along the runway's line.
 */
export interface Drawing {
  readonly facility: FacilityFile;
  readonly fromNm: number;
  /** Above 0: beyond the threshold a needle says nothing. */
  readonly toNm: number;
  readonly groundspeedKt: number;
  readonly localizerFullScale: (moment: DrawnMoment) => number;
  readonly glidepathFullScale: (moment: DrawnMoment) => number;
  /** Height above sea level in place of the glidepath's needle, where it gives one. */
  readonly heightFt?: (moment: DrawnMoment) => number | null;
}

export function drawFlight(drawing: Drawing): FlightTruth {
  const { facility, fromNm, toNm, groundspeedKt } = drawing;
  const beam = beamTruth(facility);
  const plan = scene('drawn', facility, { start: startOf(drawing), legs: [] }, ['incomplete'], {
    wind: CALM,
  });
  const beginS = Date.parse(plan.startUtc) / 1000;
  const count = Math.floor(((fromNm - toNm) / groundspeedKt) * 3600 * STEPS_PER_S) + 1;
  const places = Array.from({ length: count }, (_, i) => {
    const timeS = i / STEPS_PER_S;
    return placeOf(drawing, beam, { timeS, distanceNm: fromNm - (groundspeedKt * timeS) / 3600 });
  });
  const record = truthRecorder(plan, beam);
  for (let i = 0; i < count; i++) {
    const before = places[Math.max(0, i - 1)]!;
    const after = places[Math.min(count - 1, i + 1)]!;
    const seconds = (Math.min(count - 1, i + 1) - Math.max(0, i - 1)) / STEPS_PER_S;
    const state = stateOf(places[i]!, before, after, seconds);
    record.moment(beginS + i / STEPS_PER_S, state, { eastKt: 0, northKt: 0, upFpm: 0 });
  }
  return record.truth();
}

interface DrawnPlace {
  readonly latDeg: number;
  readonly lonDeg: number;
  readonly heightFt: number;
}

/** Moves a point across and up until its needles are the ones asked for; each round leaves a small share of the error. */
function placeOf(drawing: Drawing, beam: BeamTruth, moment: DrawnMoment): DrawnPlace {
  const wantedDeg = drawing.localizerFullScale(moment) * beam.localizerFullScaleDeg;
  const wantedPathDeg = drawing.glidepathFullScale(moment) * beam.glidepathFullScaleDeg;
  const givenFt = drawing.heightFt?.(moment) ?? null;
  const perDegree = Math.PI / 180;
  const feetAway = moment.distanceNm * 6076.1155;
  let offsetFt = 0;
  let heightFt = givenFt ?? beam.thresholdElevationFt + feetAway * Math.tan(beam.glideAngleDeg * perDegree);
  for (let round = 0; ; round++) {
    const place = { ...pointFromThreshold(beam, moment.distanceNm, offsetFt, heightFt), heightFt };
    const reading = readBeam(beam, place.latDeg, place.lonDeg, place.heightFt);
    const asideDeg = wantedDeg - reading.localizerDeg;
    const upDeg = givenFt === null ? wantedPathDeg - reading.glidepathDeg : 0;
    if (Math.abs(asideDeg) < 1e-10 && Math.abs(upDeg) < 1e-10) return place;
    if (round > 60) throw new Error(`no place has these needles at ${moment.distanceNm} NM`);
    offsetFt += asideDeg * perDegree * (feetAway + beam.runwayLengthFt + 1000);
    heightFt += upDeg * perDegree * (feetAway + 900);
  }
}

function stateOf(here: DrawnPlace, before: DrawnPlace, after: DrawnPlace, seconds: number): AircraftState {
  const frame = frameAt({ ...here, heightM: here.heightFt * METRES_PER_FOOT });
  const from = seenFrom(frame, vectorOf(before));
  const to = seenFrom(frame, vectorOf(after));
  const knots = 3600 / 1852 / seconds;
  const eastKt = (to.eastM - from.eastM) * knots;
  const northKt = (to.northM - from.northM) * knots;
  const verticalSpeedFpm = ((after.heightFt - before.heightFt) / seconds) * 60;
  return {
    latDeg: here.latDeg,
    lonDeg: here.lonDeg,
    heightFt: here.heightFt,
    headingTrueDeg: ((Math.atan2(eastKt, northKt) * 180) / Math.PI + 360) % 360,
    bankDeg: 0,
    airspeedIndicatedKt: Math.hypot(eastKt, northKt),
    climbFpm: verticalSpeedFpm,
    verticalSpeedFpm,
    eastKt,
    northKt,
    onGround: false,
    flapDeg: 0,
  };
}

function vectorOf(place: DrawnPlace): Vector {
  return earthCentred({ ...place, heightM: place.heightFt * METRES_PER_FOOT });
}

function startOf(drawing: Drawing): ReturnType<typeof scene>['start'] {
  return {
    distanceNm: drawing.fromNm,
    offsetFt: 0,
    indicatedFt: 0,
    rightOfCourseDeg: 0,
    airspeedKt: drawing.groundspeedKt,
  };
}
