import { booleanClockwise, booleanPointInPolygon, booleanValid, point, type polygon } from '@turf/turf';
import { describe, expect, it } from 'vitest';
import { geodesicBetween } from '../../../core/earth/geodesic.ts';
import { planShapes, type PlanProperties, type PlanShape } from '../../../core/facility/plan-shapes.ts';
import { METRES_PER_FOOT, METRES_PER_NM, wrap180 } from '../../../core/units/units.ts';
import { FULL, geometryOf, LEAST, withValue } from './full-facility.ts';

const geometry = geometryOf(FULL);
const shapes = planShapes(geometry).features;
type Vertex = number[];
const places = ([lonDeg, latDeg]: Vertex) => ({ lonDeg: wrap180(lonDeg!), latDeg: latDeg! });

function ofKind(kind: PlanProperties['kind']): PlanShape[] {
  return shapes.filter(({ properties }) => properties.kind === kind);
}
const ringOf = ({ geometry: { coordinates } }: PlanShape) => coordinates[0] as Vertex[];
const lineOf = ({ geometry: { coordinates } }: PlanShape) => coordinates as Vertex[];

describe('a facility on a map', () => {
  it('has a runway, a course, two sectors and three rings, all valid and counter-clockwise', () => {
    const kinds = shapes.map(({ properties: { kind } }) => kind);
    expect(kinds).toEqual([
      'runway',
      'localizer-course',
      'full-scale-sector',
      'half-scale-sector',
      'range-ring',
      'range-ring',
      'range-ring',
    ]);
    for (const shape of shapes) {
      expect(booleanValid(shape)).toBe(true);
      if (shape.geometry.type === 'Polygon') expect(booleanClockwise(ringOf(shape))).toBe(false);
    }
  });

  it('the runway’s outline is as long and wide as the runway, about its middle line', () => {
    const [startRight, farRight, farLeft, startLeft, closing] = ringOf(ofKind('runway')[0]!).map(places);
    const feet = (a: typeof startRight, b: typeof startRight) =>
      geodesicBetween(a!, b!).distanceM / METRES_PER_FOOT;
    expect(feet(startRight, startLeft)).toBeCloseTo(148, 3);
    expect(feet(farRight, farLeft)).toBeCloseTo(148, 3);
    expect(feet(startRight, farRight)).toBeCloseTo(geometry.lengthFt, 0);
    expect(geodesicBetween(startLeft!, geometry.threshold).startBearingDeg).toBeCloseTo(161, 1);
    expect(geodesicBetween(farRight!, geometry.farEnd).startBearingDeg).toBeCloseTo(341, 1);
    expect(closing).toEqual(startRight);
  });

  it('the course runs 18 NM out from the antenna, on the reciprocal, and is flown towards it', () => {
    const [outer, inner] = lineOf(ofKind('localizer-course')[0]!).map(places);
    const line = geodesicBetween(geometry.localizerAntenna, outer!);
    expect(line.distanceM).toBeCloseTo(18 * METRES_PER_NM, 3);
    expect(line.startBearingDeg).toBeCloseTo(geometry.courseTrueDeg + 180, 6);
    expect(geodesicBetween(geometry.localizerAntenna, inner!).distanceM).toBeLessThan(0.001);
  });

  it.each([
    ['full-scale-sector', 1],
    ['half-scale-sector', 0.5],
  ] as const)('the %s opens by that much of full scale to either side, to 18 NM', (kind, share) => {
    const ring = ringOf(ofKind(kind)[0]!);
    const arc = ring.slice(1, -1).map((vertex) => geodesicBetween(geometry.localizerAntenna, places(vertex)));
    for (const { distanceM } of arc) expect(distanceM).toBeCloseTo(18 * METRES_PER_NM, 3);
    const outbound = geometry.courseTrueDeg + 180;
    const halfAngle = geometry.localizerFullScaleDeg * share;
    expect(arc[0]!.startBearingDeg).toBeCloseTo(outbound + halfAngle, 6);
    expect(arc.at(-1)!.startBearingDeg).toBeCloseTo(outbound - halfAngle, 6);
    expect(ring[0]).toEqual(ring.at(-1));
  });

  it('rings stand 5, 10 and 15 NM from the threshold', () => {
    const rings = ofKind('range-ring');
    expect(rings.map(({ properties }) => properties.distanceNm)).toEqual([5, 10, 15]);
    for (const ring of rings) {
      for (const vertex of ringOf(ring)) {
        const { distanceM } = geodesicBetween(geometry.threshold, places(vertex));
        expect(distanceM).toBeCloseTo(ring.properties.distanceNm! * METRES_PER_NM, 3);
      }
      expect(ringOf(ring)[0]).toEqual(ringOf(ring).at(-1));
    }
  });
});

describe('a facility at the antimeridian is drawn in one piece', () => {
  it.each([179.99, -180, -179.99])('threshold at longitude %f', (lonDeg) => {
    const there = geometryOf(withValue(LEAST, 'runway.threshold.lonDeg', lonDeg));
    const { features } = planShapes(there);
    const longitudes = features.flatMap(({ geometry: { coordinates } }) =>
      (coordinates.flat(2) as number[]).filter((value) => Math.abs(value) > 90),
    );
    expect(longitudes.length).toBeGreaterThan(300);
    for (const longitude of longitudes) expect(Math.abs(longitude - lonDeg)).toBeLessThan(1);
    const sector = features[2] as ReturnType<typeof polygon>;
    const { lonDeg: thresholdLon, latDeg } = there.threshold;
    expect(booleanPointInPolygon(point([thresholdLon, latDeg]), sector)).toBe(true);
  });
});
