import { featureCollection, lineString, polygon } from '@turf/turf';
import { geodesicFrom, type Position } from '../earth/geodesic.ts';
import { METRES_PER_FOOT, METRES_PER_NM, wrap180 } from '../units/units.ts';
import type { FacilityGeometry } from './derive-geometry.ts';

export interface PlanProperties {
  readonly kind: 'runway' | 'localizer-course' | 'full-scale-sector' | 'half-scale-sector' | 'range-ring';
  /** Radius of a ring, from the threshold. */
  readonly distanceNm?: number;
}

type Outline = ReturnType<typeof polygon<PlanProperties>> | ReturnType<typeof lineString<PlanProperties>>;
/** One shape: a GeoJSON feature, polygon or line. */
export type PlanShape = ReturnType<typeof planShapes>['features'][number];
type Vertex = [lonDeg: number, latDeg: number];

/** FAA AIM 1-1-9 b.5 (published): a localizer course is good to 18 NM from the antenna. */
const COVERAGE_NM = 18;
const RINGS_NM = [5, 10, 15] as const;
const RING_STEPS = 120;
const ARC_STEPS = 12;

/**
 * A facility on a map, as GeoJSON (RFC 7946; degrees, rings counter-clockwise): runway outline, localizer course,
 * full-scale and half-scale sector to 18 NM from the antenna, and range rings about the threshold.
 *
 * Every vertex is a geodesic's end. Longitudes run on across the antimeridian, within half a turn of the
 * threshold's, and may so pass 180 or −180: a shape is never torn in two, as RFC 7946 3.1.9 would have it.
 */
export function planShapes(geometry: FacilityGeometry) {
  const { threshold, localizerAntenna, courseTrueDeg, localizerFullScaleDeg } = geometry;
  const outboundDeg = courseTrueDeg + 180;
  const reach = (from: Position, bearingDeg: number, distanceM: number): Vertex => {
    const { latDeg, lonDeg } = geodesicFrom(from, bearingDeg, distanceM);
    return [unwrapped(lonDeg, threshold.lonDeg), latDeg];
  };
  const sector = (halfAngleDeg: number): Vertex[] => {
    const apex: Vertex = [unwrapped(localizerAntenna.lonDeg, threshold.lonDeg), localizerAntenna.latDeg];
    const arc = Array.from({ length: ARC_STEPS + 1 }, (_, step) => {
      const asideDeg = halfAngleDeg * (1 - (2 * step) / ARC_STEPS);
      return reach(localizerAntenna, outboundDeg + asideDeg, COVERAGE_NM * METRES_PER_NM);
    });
    return [apex, ...arc, apex];
  };
  const course = [
    reach(localizerAntenna, outboundDeg, COVERAGE_NM * METRES_PER_NM),
    reach(localizerAntenna, outboundDeg, 0),
  ];
  const shapes: Outline[] = [
    polygon<PlanProperties>([runwayOutline(geometry, reach)], { kind: 'runway' }),
    lineString<PlanProperties>(course, { kind: 'localizer-course' }),
    polygon<PlanProperties>([sector(localizerFullScaleDeg)], { kind: 'full-scale-sector' }),
    polygon<PlanProperties>([sector(localizerFullScaleDeg / 2)], { kind: 'half-scale-sector' }),
    ...RINGS_NM.map((distanceNm) =>
      polygon<PlanProperties>([ring(threshold, distanceNm, reach)], { kind: 'range-ring', distanceNm }),
    ),
  ];
  return featureCollection<Outline['geometry'], PlanProperties>(shapes);
}

type Reach = (from: Position, bearingDeg: number, distanceM: number) => Vertex;

function runwayOutline(
  { threshold, farEnd, trueBearingDeg, widthFt }: FacilityGeometry,
  reach: Reach,
): Vertex[] {
  const halfWidthM = (widthFt / 2) * METRES_PER_FOOT;
  const [leftDeg, rightDeg] = [trueBearingDeg - 90, trueBearingDeg + 90];
  const start = reach(threshold, rightDeg, halfWidthM);
  const farRight = reach(farEnd, rightDeg, halfWidthM);
  const farLeft = reach(farEnd, leftDeg, halfWidthM);
  return [start, farRight, farLeft, reach(threshold, leftDeg, halfWidthM), start];
}

function ring(centre: Position, distanceNm: number, reach: Reach): Vertex[] {
  const bearingAt = (step: number): number => -(step % RING_STEPS) * (360 / RING_STEPS);
  return Array.from({ length: RING_STEPS + 1 }, (_, step) =>
    reach(centre, bearingAt(step), distanceNm * METRES_PER_NM),
  );
}

function unwrapped(lonDeg: number, nearDeg: number): number {
  return nearDeg + wrap180(lonDeg - nearDeg);
}
