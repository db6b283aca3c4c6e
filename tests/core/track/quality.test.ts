import { describe, expect, it } from 'vitest';
import { buildTrack } from '../../../core/track/build-track.ts';
import { FIX_FLAG, type Track } from '../../../core/track/track.ts';
import { flyingNorth, makeLog } from './make-log.ts';

type Rows = ReturnType<typeof flyingNorth> & { values?: { groundspeedKt: number[] } };

function trackOf(rows: Rows): Track {
  const outcome = buildTrack(makeLog(rows));
  if (!outcome.ok) throw new Error(outcome.refusal.message);
  return outcome.value;
}
const flagged = (track: Track, flag: number) =>
  [...track.flags].flatMap((flags, i) => (flags & flag ? [i] : []));
const codes = (track: Track) => track.issues.map(({ code }) => code);

/** Holds the position of fix `from` up to and with fix `to`. */
function hold(rows: Rows, from: number, to: number): Rows {
  return { ...rows, latDeg: rows.latDeg.map((lat, i) => (i > from && i <= to ? rows.latDeg[from]! : lat)) };
}

describe('frozen fixes', () => {
  it('are flagged when one position is held longer than 3 s in flight', () => {
    const track = trackOf(hold(flyingNorth(40, 90), 10, 14));
    expect(flagged(track, FIX_FLAG.frozen)).toEqual([11, 12, 13, 14]);
    expect(track.issues).toMatchObject([{ code: 'position-frozen', count: 4, firstLine: 13 }]);
    expect(track.count).toBe(40);
  });

  it('are not seen in a position held exactly 3 s: a receiver may be slower than its log', () => {
    expect(codes(trackOf(hold(flyingNorth(40, 90), 10, 13)))).not.toContain('position-frozen');
  });

  it('are told from a parked aircraft by the logged groundspeed', () => {
    const parked = { ...flyingNorth(40, 0.0001), values: { groundspeedKt: Array(40).fill(0) } };
    expect(codes(trackOf(hold(parked, 10, 30)))).toEqual([]);
    const rolling = { ...hold(flyingNorth(40, 20), 10, 30), values: { groundspeedKt: Array(40).fill(20) } };
    expect(flagged(trackOf(rolling), FIX_FLAG.frozen)).toHaveLength(20);
  });

  it('at the beginning and the end, with no logged speed, are taken for parked', () => {
    expect(codes(trackOf(hold(flyingNorth(40, 90), 0, 10)))).not.toContain('position-frozen');
    expect(codes(trackOf(hold(flyingNorth(40, 90), 30, 39)))).not.toContain('position-frozen');
  });
});

describe('jumps', () => {
  it('flag the one fix that is off, and not the return from it', () => {
    const rows = flyingNorth(40, 90);
    rows.lonDeg[20]! += 0.002;
    const track = trackOf(rows);
    expect(flagged(track, FIX_FLAG.jumped)).toEqual([20]);
    expect(track.issues).toMatchObject([
      { code: 'position-jump', count: 1, firstLine: 22, severity: 'warning' },
    ]);
    expect(track.issues[0]!.message).toContain('1 fix is reached by a jump');
  });

  it('flag the first fix after a lasting step', () => {
    const rows = flyingNorth(40, 90);
    for (let i = 20; i < 40; i++) rows.lonDeg[i]! += 0.002;
    expect(flagged(trackOf(rows), FIX_FLAG.jumped)).toEqual([20]);
  });

  it('are not seen in a fast aircraft, in two fixes, or at the end of a freeze', () => {
    expect(codes(trackOf(flyingNorth(40, 480)))).toEqual([]);
    expect(codes(trackOf(flyingNorth(2, 480)))).toEqual([]);
    expect(flagged(trackOf(hold(flyingNorth(40, 90), 10, 18)), FIX_FLAG.jumped)).toEqual([]);
  });

  it('are not seen in a receiver that gives one position a second to a log of ten', () => {
    const slow = flyingNorth(30, 90);
    const fast = {
      timeS: Array.from({ length: 300 }, (_, i) => slow.timeS[0]! + i / 10),
      latDeg: Array.from({ length: 300 }, (_, i) => slow.latDeg[Math.floor(i / 10)]!),
      lonDeg: Array.from({ length: 300 }, (_, i) => slow.lonDeg[Math.floor(i / 10)]!),
    };
    expect(codes(trackOf(fast))).toEqual([]);
  });

  it('see across the antimeridian', () => {
    const rows = flyingNorth(30, 90);
    rows.lonDeg = rows.lonDeg.map((_, i) => (i < 15 ? 179.99999 : -179.99999));
    expect(codes(trackOf(rows))).toEqual([]);
  });
});
