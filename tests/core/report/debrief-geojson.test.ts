import { booleanClockwise } from '@turf/turf';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { analyze, defineFacility } from '../../../core/analyze.ts';
import { compose, type Composed } from '../../../core/debrief/compose-debrief.ts';
import { debriefMap, geoJsonText } from '../../../core/report/debrief-geojson.ts';
import { DEFAULT_STANDARD } from '../../../core/standard/standards.ts';
import { NOTHING_STATED } from '../../../core/standard/stated.ts';
import { secondsOf } from '../../../core/units/utc.ts';

const sample = (name: string) => readFileSync(`samples/${name}`, 'utf8');
const FACILITY = sample('petrelholm-ils-07.json');

async function composed(text: string, facilityText = FACILITY): Promise<Composed> {
  const defined = defineFacility(facilityText, 'facility.json');
  if (!defined.ok) throw new Error(defined.refusal.message);
  const source = { name: 'log.csv', sha256: () => '', size: text.length, chunks: [text] };
  const job = { progress: () => {}, cancelled: () => false };
  const material = await analyze(source, defined.value, {}, job);
  if (!material.ok) throw new Error(material.refusal.message);
  const stated = { ...NOTHING_STATED, targetAirspeedKt: 90 };
  return compose(material.value, { standard: DEFAULT_STANDARD, stated });
}

interface Feature {
  readonly properties: Readonly<Record<string, unknown>> & { readonly feature: string };
  readonly geometry: { readonly type: string; readonly coordinates: never };
}
const featuresOf = (debrief: Composed) =>
  (JSON.parse(geoJsonText([debriefMap(debrief)])) as { features: Feature[] }).features;

/** Every position below a nest of them. */
const positionsOf = (nest: unknown): [number, number][] =>
  typeof (nest as number[])[0] === 'number'
    ? [nest as [number, number]]
    : (nest as unknown[]).flatMap(positionsOf);

/** A log and a facility turned about the earth's axis: the same flight in every respect, but for its longitudes. */
function turned(byDeg: number): { log: string; facility: string } {
  const wrapped = (lonDeg: number) => ((((lonDeg + byDeg + 180) % 360) + 360) % 360) - 180;
  const log = sample('went-around.csv')
    .trimEnd()
    .split('\n')
    .map((line, i) => (i === 0 ? line : line.replace(/-16\.\d+/, (lon) => wrapped(Number(lon)).toFixed(7))))
    .join('\n');
  const facility = JSON.stringify(JSON.parse(FACILITY), (key, value: unknown) =>
    key === 'lonDeg' ? wrapped(value as number) : value,
  );
  return { log, facility };
}

describe('a debrief on a map', () => {
  it('has the facility, the track, and what was outside, each as what it is', async () => {
    const features = featuresOf(await composed(sample('went-around.csv')));
    const kinds = features.map(({ properties, geometry }) => [properties.feature, geometry.type]);
    expect(kinds).toEqual([
      ['runway', 'Polygon'],
      ['localizer course', 'LineString'],
      ['full scale sector', 'Polygon'],
      ['half scale sector', 'Polygon'],
      ['approach track', 'LineString'],
      ['outside of a tolerance', 'LineString'],
    ]);
    for (const { geometry } of features.filter((one) => one.geometry.type === 'Polygon'))
      expect(booleanClockwise((geometry.coordinates as [number, number][][])[0]!)).toBe(false);
  });

  it('begins and ends a track and an excursion when the debrief does', async () => {
    const debrief = await composed(sample('went-around.csv'));
    const [approach] = debrief.debrief.approaches;
    const features = featuresOf(debrief);
    const spans = [approach!, ...approach!.criteria.flatMap(({ excursions }) => excursions)];
    const flown = features.filter(({ properties }) => 'startUtc' in properties);
    expect(flown).toHaveLength(spans.length);
    for (const [i, { startUtc, endUtc }] of spans.entries()) {
      const { properties, geometry } = flown[i]!;
      const times = properties['coordTimes'] as string[];
      expect([times[0], times.at(-1)]).toEqual([startUtc, endUtc]);
      expect(times).toHaveLength((geometry.coordinates as unknown[]).length);
      for (let k = 1; k < times.length; k++)
        expect(secondsOf(times[k]!)).toBeGreaterThan(secondsOf(times[k - 1]!));
    }
    const [, excursion] = spans as [unknown, { peak: number }];
    expect(flown[1]!.properties).toMatchObject({
      tolerance: 'Glidepath on final',
      side: 'high',
      peakFractionOfFullScale: excursion.peak,
    });
  });

  it('stands where the fixes do, and between them on their line', async () => {
    const debrief = await composed(sample('went-around.csv'));
    const { track } = debrief.sittings[0]!.flown;
    const line = featuresOf(debrief).find(({ properties }) => properties.feature === 'approach track')!;
    const times = line.properties['coordTimes'] as string[];
    const found = times.map((utc) => track.timeS.indexOf(secondsOf(utc)));
    expect(found.slice(1, -1).every((i) => i >= 0)).toBe(true);
    for (const [k, i] of found.entries()) {
      if (i < 0) continue;
      const [lonDeg, latDeg] = (line.geometry.coordinates as [number, number][])[k]!;
      expect(Math.abs(lonDeg - track.lonDeg[i]!)).toBeLessThan(1e-7);
      expect(Math.abs(latDeg - track.latDeg[i]!)).toBeLessThan(1e-7);
    }
  });

  it('draws no line across a gap', async () => {
    const [header, ...rows] = sample('went-around.csv').trimEnd().split('\n');
    const holed = [header, ...rows.filter((_, i) => i < 200 || i > 230)].join('\n');
    const features = featuresOf(await composed(holed));
    const { geometry, properties } = features.find((one) => one.properties.feature === 'approach track')!;
    expect(geometry.type).toBe('MultiLineString');
    const lines = geometry.coordinates as unknown[][];
    expect(lines).toHaveLength(2);
    expect((properties['coordTimes'] as string[][]).map((times) => times.length)).toEqual(
      lines.map((line) => line.length),
    );
  });

  // The approach is flown from 16.5° to 16.4° W: the line runs through its sector, its track, and its runway.
  it.each([-163.45, -163.55, -163.61, 196.45])(
    'is cut at the antimeridian when turned by %s°, and lies on the earth',
    async (byDeg) => {
      const { log, facility } = turned(byDeg);
      const [here, there] = [await composed(sample('went-around.csv')), await composed(log, facility)];
      expect(there.debrief.approaches[0]!.summary).toBe(here.debrief.approaches[0]!.summary);
      const features = featuresOf(there);
      for (const { geometry } of features) {
        const positions = positionsOf(geometry.coordinates);
        for (const [lonDeg, latDeg] of positions) {
          expect(Math.abs(lonDeg)).toBeLessThanOrEqual(180);
          expect(Math.abs(latDeg)).toBeLessThanOrEqual(90);
        }
        // No part of one spans the earth.
        const parts =
          geometry.type === 'LineString' || geometry.type === 'Polygon'
            ? [geometry.coordinates]
            : (geometry.coordinates as unknown[]);
        for (const part of parts) {
          const lons = positionsOf(part).map(([lonDeg]) => lonDeg);
          expect(Math.max(...lons) - Math.min(...lons)).toBeLessThan(1);
        }
      }
      const sector = features.find(({ properties }) => properties.feature === 'full scale sector')!;
      expect(sector.geometry.type).toBe('MultiPolygon');
    },
  );

  it('of no approach is an empty collection', async () => {
    const features = featuresOf(await composed(sample('overflight.csv')));
    expect(features).toEqual([]);
  });
});
