import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { beamTruth, pointFromThreshold, readBeam } from '../flight/beam-truth.ts';
import { expectedDebriefs } from './expected-debriefs.ts';
import { SAMPLE_FACILITIES, sampleFiles } from './sample-files.ts';
import { SAMPLE_FLIGHTS } from './sample-flights.ts';
import { differingSamples, writeSamples } from './write-samples.ts';

const folder = new URL('../../../samples', import.meta.url).pathname;

function off(aDeg: number, bDeg: number): number {
  return Math.abs(((aDeg - bDeg + 540) % 360) - 180);
}

describe('the samples', () => {
  let made: Map<string, string>;
  beforeAll(async () => {
    const files = sampleFiles();
    made = new Map([...files, ...(await expectedDebriefs(files))]);
  });

  it('are what the generator makes, byte for byte', () => {
    expect(differingSamples(made, folder)).toEqual([]);
  });

  it('are named when one byte differs, when one is missing, and only then', () => {
    const copy = mkdtempSync(join(tmpdir(), 'samples-'));
    writeSamples(made, copy);
    expect(differingSamples(made, copy)).toEqual([]);
    writeFileSync(join(copy, 'phone.gpx'), made.get('phone.gpx')!.replace('trkpt', 'trkPt'));
    rmSync(join(copy, 'circled.gpx'));
    expect(differingSamples(made, copy).toSorted()).toEqual([join(copy, 'circled.gpx'), join(copy, 'phone.gpx')]);
    rmSync(copy, { recursive: true });
  });

  it('hold no log, facility or page that the generator does not make', () => {
    const logs = readdirSync(folder).filter((name) => /\.(csv|gpx|md)$|-ils-\d\d\.json$/.test(name));
    expect(logs.filter((name) => !made.has(name))).toEqual([]);
  });

  it('come each with its debrief, and no debrief without its log', () => {
    const kept = readdirSync(join(folder, 'debriefs')).toSorted();
    const meant = SAMPLE_FLIGHTS.flatMap(({ file }) => [`${file}.json`, `${file}.txt`]).toSorted();
    expect(kept).toEqual(meant);
  });

  it('stay under 6 MB together', () => {
    const bytes = [...made.values()].reduce((sum, text) => sum + Buffer.byteLength(text), 0);
    expect(bytes).toBeLessThan(6e6);
  });

  it('have debriefs that say of every value that is not known why it is not', () => {
    /** There is none of it, which says itself: no remark, no limit on that side, nothing stated, no tip, nothing to practise. */
    const NONE = /^(?:remark|practise|allowed|tip|firstLine|lower|upper|unit|code|source|sourceStatus|grade|notGradedBecause|ident)$/;
    const silent = new Set<string>();
    const look = (value: unknown, path: string): void => {
      if (value === null || typeof value !== 'object' || path.endsWith('.stated')) return;
      const { unknown } = value as { unknown?: Record<string, string> };
      for (const [key, inner] of Object.entries(value)) {
        if (inner === null && !NONE.test(key) && !unknown?.[key]) silent.add(`${path}.${key}`);
        look(inner, Array.isArray(value) ? path : `${path}.${key}`);
      }
    };
    for (const [name, text] of made) if (/^debriefs.*json$/.test(name)) look(JSON.parse(text), '');
    expect([...silent]).toEqual([]);
  });

  it('are all explained on their page', () => {
    const page = made.get('README.md')!;
    for (const flight of SAMPLE_FLIGHTS) expect(page).toContain(`| ${flight.file} |`);
    for (const file of SAMPLE_FACILITIES.keys()) expect(page).toContain(`With ${file}`);
  });

  it('show every outcome that a student should see', () => {
    const outcomes = new Set(SAMPLE_FLIGHTS.flatMap((flight) => flight.plan.outcomes));
    expect([...outcomes].toSorted()).toEqual(
      ['circled', 'incomplete', 'landed', 'low-approach', 'missed-approach', 'touch-and-go'].toSorted(),
    );
    expect(SAMPLE_FLIGHTS.some((flight) => flight.plan.outcomes.length === 0)).toBe(true);
  });
});

describe.each([...SAMPLE_FACILITIES])('the facility in %s', (_, facility) => {
  it('has a fix altitude within 100 ft of its path, and minimums about 200 to 300 ft above the runway', () => {
    const beam = beamTruth(facility);
    const { distanceNm, altitudeFt } = facility.finalApproachFix;
    const place = pointFromThreshold(beam, distanceNm, 0, altitudeFt);
    const aboveFt = readBeam(beam, place.latDeg, place.lonDeg, altitudeFt).heightAboveGlidepathFt;
    expect(Math.abs(aboveFt)).toBeLessThan(100);
    const height = facility.minimums.decisionAltitudeFt - facility.runway.touchdownZoneElevationFt;
    expect(height).toBeGreaterThanOrEqual(200);
    expect(height).toBeLessThan(310);
  });

  it('has a designator, a magnetic course and a variation that agree with its runway', () => {
    const { runwayBearingTrueDeg } = beamTruth(facility);
    const magneticDeg = runwayBearingTrueDeg - facility.magneticVariationDeg;
    expect(off(Number(facility.runway.designator) * 10, magneticDeg)).toBeLessThan(6);
    const courseDeg = facility.localizer.courseTrueDeg ?? runwayBearingTrueDeg;
    expect(off(facility.localizer.courseMagneticDeg, courseDeg - facility.magneticVariationDeg)).toBeLessThan(0.6);
  });
});
