import type { Place } from '../earth/frame.ts';
import type { Facility } from './facility-schema.ts';
import { glidepathBeam } from './glidepath-beam.ts';
import { localizerBeam } from './localizer-beam.ts';
import { distanceAtGlidepathAltitudeNm, type GlidepathLine } from './path-altitude.ts';
import { runwayAxis, type RunwayAxis } from './runway-axis.ts';

/** Where a value comes from: the file, other values of the file, or a usual value in place of an unknown one. */
export type Origin = 'given' | 'derived' | 'assumed';

/**
 * Everything that the analysis needs to know of a facility, filled in and fixed once. Bearings and courses are
 * true, 0 to 360; `...FullScaleDeg` is one side; altitudes are feet above mean sea level.
 */
export interface FacilityGeometry extends GlidepathLine {
  readonly farEnd: Place;
  readonly lengthFt: number;
  readonly widthFt: number;
  readonly touchdownZoneElevationFt: number;
  readonly airportElevationFt: number | null;
  readonly localizerAntenna: Place;
  /** Inbound, at the antenna. */
  readonly courseTrueDeg: number;
  /** Course less the runway's azimuth, both at the antenna; beyond ± 0.3 the localizer is offset. */
  readonly courseOffsetDeg: number;
  readonly localizerFullScaleDeg: number;
  readonly glidepathFullScaleDeg: number;
  readonly thresholdCrossingHeightFt: number;
  /** What a given glidepath antenna implies; null without one. */
  readonly impliedCrossingHeightFt: number | null;
  readonly decisionAltitudeFt: number | null;
  /** Where final begins; assumed where the path stands 1,500 ft above the touchdown zone when none is given. */
  readonly finalApproachFix: {
    readonly name: string | null;
    readonly distanceNm: number;
    readonly altitudeFt: number | null;
  };
  readonly origins: Readonly<Record<DerivedKey, Origin>>;
}

type DerivedKey =
  | 'trueBearingDeg'
  | 'lengthFt'
  | 'widthFt'
  | 'farEndElevationFt'
  | 'touchdownZoneElevationFt'
  | 'localizerAntenna'
  | 'localizerAntennaElevationFt'
  | 'courseTrueDeg'
  | 'localizerFullScaleDeg'
  | 'glidepathOrigin'
  | 'glidepathFullScaleDeg'
  | 'finalApproachFix';

const DEFAULT_WIDTH_FT = 150;
/** The touchdown zone is the first 3,000 ft of a runway (FAA AC 91-79B; from memory). */
const TOUCHDOWN_ZONE_FT = 3000;
const ASSUMED_FIX_HEIGHT_FT = 1500;

/** Fills in a facility that `parseFacility` has passed. */
export function deriveGeometry(facility: Facility): FacilityGeometry {
  const { runway } = facility;
  const axis = runwayAxis(runway);
  if (axis === null) throw new Error('a facility without a runway direction was not refused');
  const localizer = localizerBeam(facility, axis);
  const glidepath = glidepathBeam(facility, axis);
  const line: GlidepathLine = {
    threshold: runway.threshold,
    trueBearingDeg: axis.trueBearingDeg,
    glidepathOrigin: glidepath.origin,
    glidepathAngleDeg: facility.glidepath.angleDeg,
  };
  const touchdownZoneElevationFt = runway.touchdownZoneElevationFt ?? touchdownZoneFt(facility, axis);
  return {
    ...line,
    farEnd: farEndOf(facility, axis),
    lengthFt: axis.lengthFt,
    widthFt: runway.widthFt ?? DEFAULT_WIDTH_FT,
    touchdownZoneElevationFt,
    airportElevationFt: facility.airportElevationFt ?? null,
    localizerAntenna: localizer.antenna,
    courseTrueDeg: localizer.courseTrueDeg,
    courseOffsetDeg: localizer.offsetDeg,
    localizerFullScaleDeg: localizer.fullScaleDeg,
    glidepathFullScaleDeg: glidepath.fullScaleDeg,
    thresholdCrossingHeightFt: facility.glidepath.thresholdCrossingHeightFt,
    impliedCrossingHeightFt: glidepath.impliedCrossingHeightFt,
    decisionAltitudeFt: facility.minimums?.decisionAltitudeFt ?? null,
    finalApproachFix: fixOf(facility, line, touchdownZoneElevationFt),
    origins: originsOf(facility, glidepath.origin === facility.glidepath.antenna),
  };
}

function farEndOf({ runway }: Facility, axis: RunwayAxis): Place {
  const { latDeg, lonDeg } = axis.farEnd;
  const elevationFt = runway.farEnd?.elevationFt ?? runway.threshold.elevationFt;
  return { latDeg, lonDeg, elevationFt };
}

/** The highest of the first 3,000 ft on the straight line between the ends; the threshold where one is unknown. */
function touchdownZoneFt({ runway }: Facility, axis: RunwayAxis): number {
  const { elevationFt } = runway.threshold;
  const rise = (runway.farEnd?.elevationFt ?? elevationFt) - elevationFt;
  return elevationFt + Math.max(0, rise * Math.min(1, TOUCHDOWN_ZONE_FT / axis.lengthFt));
}

function fixOf(facility: Facility, line: GlidepathLine, touchdownZoneElevationFt: number) {
  const given = facility.finalApproachFix ?? {};
  return {
    name: given.name ?? null,
    distanceNm:
      given.distanceNm ??
      distanceAtGlidepathAltitudeNm(line, touchdownZoneElevationFt + ASSUMED_FIX_HEIGHT_FT),
    altitudeFt: given.altitudeFt ?? null,
  };
}

function originsOf(facility: Facility, antennaUsed: boolean): FacilityGeometry['origins'] {
  const { runway, localizer = {}, glidepath, finalApproachFix } = facility;
  const given = (value: unknown, otherwise: Origin): Origin => (value === undefined ? otherwise : 'given');
  const fromEnds: Origin = runway.farEnd === undefined ? 'given' : 'derived';
  const setback: Origin = localizer.antennaSetbackFt === undefined ? 'assumed' : 'derived';
  return {
    trueBearingDeg: fromEnds,
    lengthFt: fromEnds,
    widthFt: given(runway.widthFt, 'assumed'),
    farEndElevationFt: given(runway.farEnd?.elevationFt, 'assumed'),
    touchdownZoneElevationFt: given(
      runway.touchdownZoneElevationFt,
      runway.farEnd?.elevationFt === undefined ? 'assumed' : 'derived',
    ),
    localizerAntenna: given(localizer.antenna, setback),
    localizerAntennaElevationFt: given(localizer.antenna?.elevationFt, 'assumed'),
    courseTrueDeg: given(localizer.courseTrueDeg, 'derived'),
    localizerFullScaleDeg: given(localizer.courseWidthDeg, 'derived'),
    glidepathOrigin: antennaUsed ? 'given' : 'derived',
    glidepathFullScaleDeg: given(glidepath.fullScaleDeg, 'derived'),
    finalApproachFix: given(finalApproachFix?.distanceNm, 'assumed'),
  };
}
