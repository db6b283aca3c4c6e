import { checkFacility } from '../facility/contradictions.ts';
import type { FacilityGeometry } from '../facility/derive-geometry.ts';
import { gradientFtPerNm } from '../facility/descent-rate.ts';
import { confirmedOf } from '../facility/drafted-from.ts';
import type { Facility } from '../facility/facility-schema.ts';
import { distanceAtGlidepathAltitudeNm, glidepathAltitudeFt } from '../facility/path-altitude.ts';
import { magneticFromTrue, magneticVariation } from '../facility/variation.ts';
import { issue, usable, type Issue, type Outcome } from '../issue/issue.ts';
import { gateDatumFt } from '../standard/gate-datum.ts';
import { whole } from '../units/whole.ts';
import { altimeterShowsFt, altitudeShownAsFt, correctedByTableFt, type Air } from './altimeter.ts';
import type {
  BriefedCourse,
  BriefedDecision,
  BriefedFix,
  BriefedGates,
  Briefing,
  BriefingAsked,
  PathPlace,
} from './briefing.ts';
import { briefedWind } from './briefed-wind.ts';
import { descentsOf } from './descents.ts';
import { missedApproachSteps } from './missed-approach-steps.ts';
import { needlesOf } from './needles.ts';

/** A glidepath can be used to 10 NM as a rule: FAA AIM 1-1-9 d.3 (published). */
const PATH_NM = [10, 9, 8, 7, 6, 5, 4, 3, 2, 1] as const;
const GATES_FT = [1000, 500] as const;

/** What the sheet is made of: a facility, and its geometry. */
export interface Briefed {
  readonly facility: Facility;
  readonly geometry: FacilityGeometry;
}

/**
 * All that is briefed of an approach; refused (`facility-draft-unconfirmed`) of a draft that nobody has confirmed.
 *
 * @param onDate decimal year for the magnetic model; null when no day is known
 */
export function briefingOf(briefed: Briefed, asked: BriefingAsked, onDate: number | null): Outcome<Briefing> {
  const confirmed = confirmedOf(briefed);
  return confirmed.ok ? usable(briefingOn(confirmed.value, asked, onDate)) : confirmed;
}

function briefingOn(briefed: Briefed, asked: BriefingAsked, onDate: number | null): Briefing {
  const { facility, geometry } = briefed;
  const { temperatureC, decisionAltitudeFt, dots, objective, goals, enteredBy, enteredOn } = asked;
  const air: Air = { elevationFt: altimeterSourceFt(geometry), temperatureC };
  const course = courseOf(briefed, onDate);
  const fix = fixOf(briefed, air);
  const decision = decisionAltitudeFt === null ? null : decisionOf(geometry, air, decisionAltitudeFt);
  const { climbToFt = null, instructions = '' } = facility.missedApproach ?? {};
  return {
    format: 'halfdot-briefing/1',
    facility: facilityOf(briefed),
    course,
    glidepath: {
      angleDeg: geometry.glidepathAngleDeg,
      gradientFtPerNm: gradientFtPerNm(geometry.glidepathAngleDeg),
      thresholdCrossingHeightFt: geometry.thresholdCrossingHeightFt,
    },
    temperatureC,
    path: PATH_NM.map((distanceNm) => placeOn(geometry, air, distanceNm)),
    fix,
    decision,
    gates: gatesOf(geometry, air, asked.gateDatum),
    descents: descentsOf(geometry.glidepathAngleDeg, asked.groundspeedKt, fix, decision),
    wind: asked.wind && briefedWind(asked.wind, asked.airspeedKt, course, descentAir(air, fix, decision)),
    needles: needlesOf(geometry, dots, decision),
    missedApproach: { climbToFt, steps: missedApproachSteps(instructions) },
    objective,
    goals,
    enteredBy,
    enteredOn,
    toCheck: [...checkFacility(facility, geometry, onDate), ...otherDecision(facility, decisionAltitudeFt)],
  };
}

function facilityOf({ facility, geometry }: Briefed): Briefing['facility'] {
  return {
    name: facility.name,
    ident: facility.ident ?? null,
    frequencyMHz: facility.frequencyMHz ?? null,
    runway: facility.runway.designator,
    lengthFt: geometry.lengthFt,
    thresholdElevationFt: geometry.threshold.elevationFt,
    touchdownZoneElevationFt: geometry.touchdownZoneElevationFt,
    airportElevationFt: geometry.airportElevationFt,
  };
}

function courseOf({ facility, geometry }: Briefed, onDate: number | null): BriefedCourse {
  const { courseTrueDeg: trueDeg } = geometry;
  const { usedDeg: variationDeg } = magneticVariation(facility, geometry, onDate);
  const givenDeg = facility.localizer?.courseMagneticDeg;
  if (givenDeg !== undefined) return { trueDeg, magneticDeg: givenDeg, magneticFrom: 'given', variationDeg };
  if (variationDeg === null) return { trueDeg, magneticDeg: null, magneticFrom: null, variationDeg };
  const magneticFrom = facility.magneticVariationDeg === undefined ? 'model' : 'variation';
  return { trueDeg, magneticDeg: magneticFromTrue(trueDeg, variationDeg), magneticFrom, variationDeg };
}

/** Where the altimeter setting and the temperature are measured: the aerodrome. */
function altimeterSourceFt({ airportElevationFt, touchdownZoneElevationFt }: FacilityGeometry): number {
  return airportElevationFt ?? touchdownZoneElevationFt;
}

function placeOn(geometry: FacilityGeometry, air: Air, distanceNm: number): PathPlace {
  const altitudeFt = glidepathAltitudeFt(geometry, distanceNm);
  const altimeterFt = air.temperatureC === null ? null : altimeterShowsFt(air, altitudeFt);
  return { distanceNm, altitudeFt, altimeterFt };
}

function fixOf({ facility, geometry }: Briefed, air: Air): BriefedFix {
  const { name, distanceNm, altitudeFt: publishedAltitudeFt } = geometry.finalApproachFix;
  const place = placeOn(geometry, air, distanceNm);
  return {
    ...place,
    name,
    isAssumed: geometry.origins.finalApproachFix === 'assumed',
    byTableFt: correctedByTableFt(air, place.altitudeFt),
    dmeNm: facility.finalApproachFix?.dmeNm ?? null,
    publishedAltitudeFt,
    pathAboveFt: publishedAltitudeFt === null ? null : place.altitudeFt - publishedAltitudeFt,
  };
}

function decisionOf(geometry: FacilityGeometry, air: Air, altitudeFt: number): BriefedDecision {
  return {
    altitudeFt,
    aboveTouchdownZoneFt: altitudeFt - geometry.touchdownZoneElevationFt,
    distanceNm: distanceShownNm(geometry, air, altitudeFt),
  };
}

function gatesOf(geometry: FacilityGeometry, air: Air, datum: BriefingAsked['gateDatum']): BriefedGates {
  const isUnknown = datum === 'airport' && geometry.airportElevationFt === null;
  const datumFt = gateDatumFt({ gates: { datum } }, geometry);
  const gates = GATES_FT.map((heightFt) => {
    const altitudeFt = datumFt + heightFt;
    return { heightFt, altitudeFt, distanceNm: distanceShownNm(geometry, air, altitudeFt) };
  });
  return { datum: isUnknown ? 'touchdown-zone' : datum, datumFt, gates };
}

/** Where on the path an altimeter shows an altitude. */
function distanceShownNm(geometry: FacilityGeometry, air: Air, altimeterFt: number): number {
  return distanceAtGlidepathAltitudeNm(geometry, altitudeShownAsFt(air, altimeterFt));
}

/** The air half-way down, in which an airspeed is turned into a true one. */
function descentAir({ elevationFt, temperatureC }: Air, fix: BriefedFix, decision: BriefedDecision | null) {
  const altitudeFt = (fix.altitudeFt + (decision?.altitudeFt ?? elevationFt)) / 2;
  return { altitudeFt, aerodrome: { elevationFt, temperatureC } };
}

/** The facility's own is nothing to fly by, but where it is another, one of the two is wrong. */
function otherDecision({ minimums }: Facility, typedFt: number | null): Issue[] {
  const enteredFt = minimums?.decisionAltitudeFt;
  if (typedFt === null || enteredFt === undefined || enteredFt === typedFt) return [];
  const message = `The decision altitude typed is ${whole(typedFt)} ft, but the facility's minimums.decisionAltitudeFt is ${whole(enteredFt)}`;
  const tip = 'Check both against the current chart.';
  return [issue('warning', 'decision-altitude-not-the-facilitys', `${message}.`, { tip })];
}
