import { METRES_PER_FOOT, METRES_PER_NM } from '../units/units.ts';
import { MAX_ANTENNA_SETBACK_FT, RUNWAY_LENGTH_FT, type Facility } from './facility-schema.ts';
import type { JsonPath } from '../json/json-text.ts';
import type { JsonProblem } from '../json/problem.ts';
import { localizerBeam } from './localizer-beam.ts';
import { placeOnAxis, runwayAxis, type RunwayAxis } from './runway-axis.ts';
import { bearingWords, decimal } from './wording.ts';
import { whole } from '../units/whole.ts';

/** More than any aerodrome's slope between two of its points (our own choice): a slip of the pen. */
const MAX_ELEVATION_SPREAD_FT = 500;
/** No localizer array stands so far from the centreline, nor any glidepath mast (our own choice). */
const MAX_LOCALIZER_ASIDE_FT = 5000;
const MAX_GLIDEPATH_ASIDE_FT = 1500;
const MAX_GLIDEPATH_ALONG_FT = 4000;
/** A course farther from the runway than this does not lead to it (a localizer-type aid ends at 30 degrees). */
const MAX_COURSE_OFF_RUNWAY_DEG = 45;
/** From here on a localizer is offset, and where its antenna stands decides everything (our own choice). */
export const OFFSET_LOCALIZER_DEG = 0.3;

/** What a facility's values, each possible on its own, cannot be together. */
export function impossibleValues(facility: Facility): JsonProblem[] {
  const axis = runwayAxis(facility.runway);
  const problems = [...impossibleHeights(facility)];
  if (axis === null) {
    const tip = 'Give runway.farEnd (latitude and longitude), or runway.trueBearingDeg and runway.lengthFt.';
    problems.unshift({
      code: 'facility-missing-key',
      path: ['runway', 'farEnd'],
      says: 'is missing, and so is a bearing with a length: the direction of the runway is not known',
      tip,
    });
    return problems;
  }
  return [
    ...problems,
    ...impossibleEnds(axis),
    ...impossibleAntennas(facility, axis),
    ...impossibleCourse(facility, axis),
  ];
}

function impossible(path: JsonPath, says: string, tip: string | null): JsonProblem {
  return { code: 'facility-impossible-value', path, says, tip };
}

function impossibleHeights(facility: Facility): JsonProblem[] {
  const { runway, localizer, glidepath, minimums, finalApproachFix, missedApproach } = facility;
  const thresholdFt = runway.threshold.elevationFt;
  const runwayFt = Math.max(thresholdFt, runway.touchdownZoneElevationFt ?? thresholdFt);
  const elevations: [JsonPath, number | undefined][] = [
    [['airportElevationFt'], facility.airportElevationFt],
    [['runway', 'farEnd', 'elevationFt'], runway.farEnd?.elevationFt],
    [['runway', 'touchdownZoneElevationFt'], runway.touchdownZoneElevationFt],
    [['localizer', 'antenna', 'elevationFt'], localizer?.antenna?.elevationFt],
    [['glidepath', 'antenna', 'elevationFt'], glidepath.antenna?.elevationFt],
  ];
  const altitudes: [JsonPath, number | undefined][] = [
    [['minimums', 'decisionAltitudeFt'], minimums?.decisionAltitudeFt],
    [['finalApproachFix', 'altitudeFt'], finalApproachFix?.altitudeFt],
    [['missedApproach', 'climbToFt'], missedApproach?.climbToFt],
  ];
  return [
    ...elevations.flatMap(([path, elevationFt]) => elevationFarOff(path, elevationFt, thresholdFt)),
    ...altitudes.flatMap(([path, altitudeFt]) => altitudeBelowRunway(path, altitudeFt, runwayFt)),
  ];
}

function elevationFarOff(path: JsonPath, elevationFt: number | undefined, thresholdFt: number) {
  if (elevationFt === undefined || Math.abs(elevationFt - thresholdFt) <= MAX_ELEVATION_SPREAD_FT) return [];
  const says = `is ${decimal(elevationFt)}: the threshold lies at ${whole(thresholdFt)} ft, and one aerodrome's elevations lie within ${MAX_ELEVATION_SPREAD_FT} ft`;
  return [impossible(path, says, 'Compare it with runway.threshold.elevationFt: one of them is mistyped.')];
}

function altitudeBelowRunway(path: JsonPath, altitudeFt: number | undefined, runwayFt: number) {
  if (altitudeFt === undefined || altitudeFt > runwayFt) return [];
  const says = `is ${whole(altitudeFt)}: that is not above the runway, which lies at ${whole(runwayFt)} ft`;
  return [impossible(path, says, 'Altitudes count from sea level: is this a height above the runway?')];
}

function impossibleEnds(axis: RunwayAxis): JsonProblem[] {
  const { min, max } = RUNWAY_LENGTH_FT;
  if (axis.lengthFt >= min && axis.lengthFt <= max) return [];
  const apart =
    axis.lengthFt < min
      ? `${whole(axis.lengthFt)} ft`
      : `${decimal((axis.lengthFt * METRES_PER_FOOT) / METRES_PER_NM)} NM`;
  const says = `is ${apart} from the threshold: a runway is ${whole(min)} to ${whole(max)} ft long`;
  return [impossible(['runway', 'farEnd'], says, 'Check the latitude and longitude of both ends.')];
}

function impossibleAntennas(facility: Facility, axis: RunwayAxis): JsonProblem[] {
  const problems: JsonProblem[] = [];
  const { localizer, glidepath } = facility;
  if (localizer?.antenna) {
    const path = ['localizer', 'antenna'];
    const { alongFt, rightFt } = placeOnAxis(axis, localizer.antenna);
    if (alongFt <= 0) problems.push(backCourse(path, alongFt));
    else if (alongFt > axis.lengthFt + MAX_ANTENNA_SETBACK_FT || Math.abs(rightFt) > MAX_LOCALIZER_ASIDE_FT)
      problems.push(impossible(path, farFromRunway(alongFt, rightFt), 'Check its latitude and longitude.'));
  }
  if (glidepath.antenna) {
    const path = ['glidepath', 'antenna'];
    const { alongFt, rightFt } = placeOnAxis(axis, glidepath.antenna);
    if (alongFt <= 0 || alongFt > MAX_GLIDEPATH_ALONG_FT || Math.abs(rightFt) > MAX_GLIDEPATH_ASIDE_FT)
      problems.push(
        impossible(
          path,
          farFromRunway(alongFt, rightFt),
          'It stands beside the touchdown zone, past the threshold.',
        ),
      );
  }
  return problems;
}

function backCourse(path: JsonPath, alongFt: number): JsonProblem {
  const says = `stands ${whole(-alongFt)} ft before the threshold: that is a back course, which is not supported`;
  const tip = 'The antenna of a front course stands beyond the far end of the runway.';
  return { code: 'facility-back-course', path, says, tip };
}

function farFromRunway(alongFt: number, rightFt: number): string {
  const along = `${whole(Math.abs(alongFt))} ft ${alongFt < 0 ? 'before' : 'past'} the threshold`;
  return `stands ${along} and ${whole(Math.abs(rightFt))} ft ${rightFt < 0 ? 'left' : 'right'} of the centreline: no such antenna does`;
}

function impossibleCourse(facility: Facility, axis: RunwayAxis): JsonProblem[] {
  const course = facility.localizer?.courseTrueDeg;
  if (course === undefined) return [];
  const path = ['localizer', 'courseTrueDeg'];
  const offDeg = Math.abs(localizerBeam(facility, axis).offsetDeg);
  const apart = `is ${decimal(course, 2)}: the runway lies ${bearingWords(axis.trueBearingDeg, 1)} true`;
  if (offDeg > MAX_COURSE_OFF_RUNWAY_DEG)
    return [
      impossible(
        path,
        `${apart}, ${whole(offDeg)} degrees away`,
        'The course is the one flown inbound, true, not magnetic.',
      ),
    ];
  if (offDeg <= OFFSET_LOCALIZER_DEG || facility.localizer?.antenna) return [];
  const says = `${apart}, so the localizer is offset by ${decimal(offDeg, 2)} degrees, and where its antenna stands must be known`;
  const tip = 'Give localizer.antenna, or leave courseTrueDeg out if the localizer is on the centreline.';
  return [{ code: 'facility-offset-without-antenna', path, says, tip }];
}
