import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

let folder: string;
let log: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'halfdot-start-'));
  log = join(folder, 'counted.csv');
  const rows = Array.from({ length: 60 }, (_, s) => `${s},${10 + s * 0.0005},20,${1000 + s}`);
  writeFileSync(
    log,
    ['Elapsed Time (s),Latitude (deg),Longitude (deg),GNSS Altitude (ft)', ...rows].join('\n'),
  );
});
afterAll(() => rmSync(folder, { recursive: true }));

/** The built command on a machine in another zone. */
function inspected(start: string, zone: string): string {
  return execFileSync(process.execPath, ['dist/halfdot.js', 'inspect', log, '--start', start], {
    encoding: 'utf8',
    env: { ...process.env, TZ: zone },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
}

describe('--start without a zone', () => {
  it.each(['Pacific/Auckland', 'America/Anchorage', 'UTC'])(
    'is UTC, as in the page, on a machine in %s',
    (zone) => {
      const told = inspected('2026-05-01T09:00:00Z', zone);
      expect(told).toMatch(/1\s+May\s+2026,\s+09:00:00/);
      expect(inspected('2026-05-01 09:00', zone)).toBe(told);
      expect(inspected('2026-05-01T11:00+02:00', zone)).toBe(told);
    },
  );
});
