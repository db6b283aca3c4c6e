import { METRES_PER_FOOT } from '../../../core/units/units.ts';
import { beamTruth } from '../../support/flight/beam-truth.ts';
import {
  earthCentred,
  frameAt,
  geodetic,
  longitudeInRange,
  pointAt,
  seenFrom,
  type LocalFrame,
} from '../../support/flight/ellipsoid.ts';
import type { FacilityFile } from '../../support/flight/facility-file.ts';
import type { Rows } from './flight-variants.ts';

interface Point {
  readonly latDeg: number;
  readonly lonDeg: number;
  readonly heightFt: number;
}
type Move = (point: Point) => Point;

/** A whole flight and its facility moved, point by point; a given course is moved as the line that it is. */
function moved(rows: Rows, move: Move): Rows {
  const points = rows.timeS.map((_, i) =>
    move({ latDeg: rows.latDeg[i]!, lonDeg: rows.lonDeg[i]!, heightFt: rows.heightFt[i]! }),
  );
  return {
    facility: movedFacility(rows.facility, move),
    timeS: rows.timeS,
    latDeg: points.map(({ latDeg }) => latDeg),
    lonDeg: points.map(({ lonDeg }) => lonDeg),
    heightFt: points.map(({ heightFt }) => heightFt),
  };
}

function movedFacility(facility: FacilityFile, move: Move): FacilityFile {
  // Elevations stay as they are written: only the place moves.
  const place = <P extends { latDeg: number; lonDeg: number; elevationFt: number }>(from: P): P => {
    const { latDeg, lonDeg } = move({ ...from, heightFt: from.elevationFt });
    return { ...from, latDeg, lonDeg };
  };
  const { runway, localizer, glidepath } = facility;
  const { antenna, courseTrueDeg, ...restOfLocalizer } = localizer;
  const { antenna: glidepathAntenna, ...restOfGlidepath } = glidepath;
  return {
    ...facility,
    runway: { ...runway, threshold: place(runway.threshold), farEnd: place(runway.farEnd) },
    localizer: {
      ...restOfLocalizer,
      ...(antenna && { antenna: place(antenna) }),
      ...(antenna &&
        courseTrueDeg !== undefined && { courseTrueDeg: movedCourse(antenna, courseTrueDeg, move) }),
    },
    glidepath: { ...restOfGlidepath, ...(glidepathAntenna && { antenna: place(glidepathAntenna) }) },
  };
}

const frameOf = ({ latDeg, lonDeg, heightFt }: Point): LocalFrame =>
  frameAt({ latDeg, lonDeg, heightM: heightFt * METRES_PER_FOOT });

function pointOf(vector: Parameters<typeof geodetic>[0]): Point {
  const { latDeg, lonDeg, heightM } = geodetic(vector);
  return { latDeg, lonDeg: longitudeInRange(lonDeg), heightFt: heightM / METRES_PER_FOOT };
}

function movedCourse(
  antenna: { latDeg: number; lonDeg: number; elevationFt: number },
  courseTrueDeg: number,
  move: Move,
): number {
  const from = { ...antenna, heightFt: antenna.elevationFt };
  const course = (courseTrueDeg * Math.PI) / 180;
  const [outM, frame] = [-18520, frameOf(from)];
  const onCourse = pointOf(pointAt(frame, outM * Math.sin(course), outM * Math.cos(course), 0));
  const seen = seenFrom(frameOf(move(from)), vectorOf(move(onCourse)));
  return ((Math.atan2(-seen.eastM, -seen.northM) * 180) / Math.PI + 360) % 360;
}

function vectorOf({ latDeg, lonDeg, heightFt }: Point) {
  return earthCentred({ latDeg, lonDeg, heightM: heightFt * METRES_PER_FOOT });
}

/** Around the earth's axis, so that the threshold stands at a longitude: nothing else changes at all. */
export function atLongitude(rows: Rows, lonDeg: number): Rows {
  const by = lonDeg - rows.facility.runway.threshold.lonDeg;
  return moved(rows, (point) => ({ ...point, lonDeg: longitudeInRange(point.lonDeg + by) }));
}

function thresholdFrame({ facility: { runway } }: Rows): LocalFrame {
  return frameOf({ ...runway.threshold, heightFt: runway.threshold.elevationFt });
}

/**
 * To another place, turned by an angle: what is seen from the threshold stays as it was. The earth is flatter or
 * rounder there by up to 0.7 % of its curve, so a height 8 NM out changes by up to 0.4 ft against sea level.
 */
export function atPlace(rows: Rows, latDeg: number, lonDeg: number, turnedDeg: number): Rows {
  const from = thresholdFrame(rows);
  const to = frameOf({ latDeg, lonDeg, heightFt: rows.facility.runway.threshold.elevationFt });
  const [sin, cos] = [Math.sin((turnedDeg * Math.PI) / 180), Math.cos((turnedDeg * Math.PI) / 180)];
  return moved(rows, (point) => {
    const { eastM, northM, upM } = seenFrom(from, vectorOf(point));
    return pointOf(pointAt(to, eastM * cos + northM * sin, northM * cos - eastM * sin, upM));
  });
}

/** Left for right across the upright plane through the runway. */
export function mirrored(rows: Rows): Rows {
  const frame = thresholdFrame(rows);
  const bearing = (beamTruth(rows.facility).runwayBearingTrueDeg * Math.PI) / 180;
  const [sin, cos] = [Math.sin(bearing), Math.cos(bearing)];
  return moved(rows, (point) => {
    const { eastM, northM, upM } = seenFrom(frame, vectorOf(point));
    const rightM = eastM * cos - northM * sin;
    return pointOf(pointAt(frame, eastM - 2 * rightM * cos, northM + 2 * rightM * sin, upM));
  });
}
