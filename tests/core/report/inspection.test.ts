import { describe, expect, it } from 'vitest';
import { headerKey } from '../../../core/log/header-key.ts';
import { inspection } from '../../../core/report/inspection.ts';
import { buildTrack } from '../../../core/track/build-track.ts';
import { readUsable } from '../log/reading.ts';

const HEADER = 'Time,Latitude,Longitude,AltMSL (ft)';
const ROWS = ['2024-05-01T10:00:00Z,47.1,8.1,3000', '2024-05-01T10:00:01Z,47.101,8.1,2990'];

async function inspected(header: string) {
  const log = await readUsable([header, ...ROWS].join('\n'));
  const track = buildTrack(log);
  if (!track.ok) throw new Error(track.refusal.message);
  return inspection(log, track.value);
}

describe('an inspection', () => {
  it('carries the key of its header, the same for every log with that header', async () => {
    const [one, again, other] = [
      await inspected(HEADER),
      await inspected(HEADER.toUpperCase()),
      await inspected(HEADER.replace('AltMSL', 'GPS alt')),
    ];
    expect(one.headerKey).toBe(headerKey(one.columns));
    expect(again.headerKey).toBe(one.headerKey);
    expect(other.headerKey).not.toBe(one.headerKey);
  });

  it('says times, span and heights as the log has them', async () => {
    expect(await inspected(HEADER)).toMatchObject({
      file: 'flight',
      fixes: 2,
      startUtc: '2024-05-01T10:00:00Z',
      endUtc: '2024-05-01T10:00:01Z',
      durationS: 1,
      altitudeFt: { lowest: 2990, highest: 3000 },
    });
  });
});
