import { writeFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import type { Deviations } from '../../../core/deviation/deviations.ts';
import type { FacilityGeometry } from '../../../core/facility/derive-geometry.ts';
import { deviationsCsv } from '../../../core/report/deviations-csv.ts';
import type { Track } from '../../../core/track/track.ts';
import { SecondLane } from '../../../electron/cli/second-lane.ts';
import { ROOT } from '../../house/source-files.ts';

const LARGE = 1e9;
const BUILT = join(ROOT, 'dist', 'lines-worker.mjs');
const folder = mkdtempSync(join(tmpdir(), 'halfdot-lane-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Made-up columns: what matters is which value stands in which line. */
function made(count: number): [Track, Deviations, FacilityGeometry] {
  const column = (salt: number) =>
    Float64Array.from({ length: count }, (_, i) => (i % 7 === salt ? NaN : i / 3 + salt));
  const track = { count, timeS: Float64Array.from({ length: count }, (_, i) => 1.7e9 + i / 10) };
  const named = (names: readonly string[], from: number) =>
    Object.fromEntries(names.map((name, i) => [name, column(from + i)]));
  const deviations = [
    'distanceToThresholdNm',
    'centrelineOffsetFt',
    'localizerFullScale',
    'glidepathFullScale',
    'heightAboveGlidepathFt',
  ];
  return [
    { ...track, ...named(['latDeg', 'lonDeg', 'altitudeFt'], 0) } as unknown as Track,
    named(deviations, 3) as unknown as Deviations,
    { localizerFullScaleDeg: 2.5, glidepathFullScaleDeg: 0.7 } as FacilityGeometry,
  ];
}

async function written(lane: SecondLane, count: number): Promise<string> {
  const parts: string[] = [];
  for await (const part of lane.texts(...made(count))) parts.push(part);
  await lane.close();
  return parts.join('');
}

describe('lines that two threads write', () => {
  const whole = (count: number) => [...deviationsCsv(...made(count))].join('');

  it.each([1, 4000, 4001, 8000, 21_234])('are those that one writes, of %i fixes', async (count) => {
    expect(await written(new SecondLane(LARGE, BUILT), count)).toBe(whole(count));
  });

  it('are written by one where the log is short, and where the other is not built', async () => {
    expect(await written(new SecondLane(1000, BUILT), 9000)).toBe(whole(9000));
    expect(await written(new SecondLane(LARGE, join(folder, 'none.mjs')), 9000)).toBe(whole(9000));
  });

  it('are all there where the other thread falls', async () => {
    const broken = join(folder, 'broken.mjs');
    writeFileSync(
      broken,
      "import { parentPort } from 'node:worker_threads'; parentPort.on('message', (m) => { if (Array.isArray(m)) throw new Error('fell'); });",
    );
    expect(await written(new SecondLane(LARGE, broken), 30_000)).toBe(whole(30_000));
  });
});
