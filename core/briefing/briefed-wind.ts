import type { StatedWind } from '../approach/estimated-airspeed.ts';
import { trueOverIndicated, warmerThanStandardC } from '../earth/atmosphere.ts';
import { wrap360 } from '../units/units.ts';
import type { Air } from './altimeter.ts';
import type { BriefedCourse, BriefedHeading, BriefedWind } from './briefing.ts';
import { holdingCourse, windOnCourse, type WindOnCourse } from './wind-triangle.ts';

/** Where an airspeed is flown, and the air at the aerodrome. */
interface FlownIn {
  readonly altitudeFt: number;
  readonly aerodrome: Air;
}

/** What a wind does on the course, and the heading that holds it at an indicated airspeed. */
export function briefedWind(
  wind: StatedWind,
  airspeedKt: number | null,
  course: BriefedCourse,
  flownIn: FlownIn,
): BriefedWind {
  const onCourse = windOnCourse(course.trueDeg, wind);
  const heading = airspeedKt === null ? null : headingAt(airspeedKt, onCourse, course, flownIn);
  return { ...wind, ...onCourse, airspeedKt, heading };
}

function headingAt(
  airspeedKt: number,
  onCourse: WindOnCourse,
  { trueDeg, magneticDeg }: BriefedCourse,
  flownIn: FlownIn,
): BriefedHeading | null {
  const trueAirspeedKt = airspeedKt * trueOverIndicated(flownIn.altitudeFt, warmerC(flownIn));
  const held = holdingCourse(trueAirspeedKt, onCourse);
  if (held === null) return null;
  return {
    trueAirspeedKt,
    ...held,
    trueDeg: wrap360(trueDeg + held.correctionDeg),
    magneticDeg: magneticDeg === null ? null : wrap360(magneticDeg + held.correctionDeg),
  };
}

/** Air that is warmer than standard at the aerodrome is taken to be so much warmer above it. */
function warmerC({ aerodrome: { elevationFt, temperatureC } }: FlownIn): number {
  return temperatureC === null ? 0 : warmerThanStandardC(elevationFt, temperatureC);
}
