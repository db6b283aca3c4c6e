import { describe, expect, it } from 'vitest';
import { readLog } from '../../../core/log/read-log.ts';
import { codes, idle, readUsable } from './reading.ts';

const CSV = `Time,Latitude,Longitude,GPS altitude (ft),Ground speed (kt)
2024-05-01T10:00:00Z,47.1,8.1,1000,100
2024-05-01T10:00:01Z,47.2,8.2,1010,101.5
`;

const GPX = `<?xml version="1.0"?>
<gpx version="1.1"><trk><trkseg>
<trkpt lat="47.1" lon="8.1"><ele>304.8</ele><time>2024-05-01T10:00:00Z</time></trkpt>
<trkpt lat="47.2" lon="8.2"><ele>307.848</ele><time>2024-05-01T10:00:01Z</time></trkpt>
</trkseg></trk></gpx>`;

describe('reading a log', () => {
  it('a plain CSV and the same flight as GPX give the same fixes', async () => {
    const csv = await readUsable(CSV);
    const gpx = await readUsable(GPX);
    expect([csv.kind, gpx.kind]).toEqual(['csv', 'gpx']);
    expect([...csv.timeS]).toEqual([1714557600, 1714557601]);
    expect([...gpx.timeS]).toEqual([...csv.timeS]);
    expect([...csv.values.latDeg]).toEqual([47.1, 47.2]);
    expect([...gpx.values.latDeg]).toEqual([47.1, 47.2]);
    expect([...csv.values.lonDeg]).toEqual([8.1, 8.2]);
    expect([...gpx.values.lonDeg]).toEqual([8.1, 8.2]);
    expect([...csv.values.altitudeGeometricFt!]).toEqual([1000, 1010]);
    for (const [i, altitudeFt] of gpx.values.altitudeGeometricFt!.entries()) {
      expect(altitudeFt).toBeCloseTo(csv.values.altitudeGeometricFt![i]!, 9);
    }
    expect([...csv.values.groundspeedKt!]).toEqual([100, 101.5]);
    expect(gpx.values.groundspeedKt).toBeUndefined();
    expect([[...csv.line], [...gpx.line]]).toEqual([
      [2, 3],
      [3, 4],
    ]);
    expect(csv.issues).toEqual([]);
    expect(codes(gpx)).toEqual(['gpx-ele-assumed-msl']);
  });

  it('carries the name and the hash of the source', async () => {
    const log = await readUsable(CSV);
    expect([log.name, log.sha256, log.rowsSeen, log.timeReference]).toEqual(['flight', 'hash', 2, 'utc']);
    expect(log.recognised).toBe('comma-separated, header on line 1');
  });

  it('a cancelled job is a refusal of its own, before and while reading', async () => {
    for (const allowed of [0, 1, 3]) {
      let asked = 0;
      const job = { ...idle, cancelled: () => asked++ >= allowed };
      const outcome = await readLog({ name: 'a', sha256: () => '', size: null, chunks: [CSV] }, {}, job);
      expect(!outcome.ok && outcome.refusal.code).toBe('cancelled');
    }
  });
});
