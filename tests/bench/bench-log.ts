import { KNOTS_PER_METRE_PER_SECOND, METRES_PER_NM } from '../../core/units/units.ts';

/** A facility for the benchmarks, invented: on the equator, landing east, so that the made track is easy to check. */
export const BENCH_FACILITY = {
  format: 'halfdot-facility/1',
  name: 'Bench 10',
  runway: {
    // The magnetic model gives 14° west there.
    designator: '10',
    threshold: { latDeg: 0.5, lonDeg: -25, elevationFt: 20 },
    trueBearingDeg: 90,
    lengthFt: 8000,
  },
  glidepath: { angleDeg: 3, thresholdCrossingHeightFt: 50 },
  minimums: { decisionAltitudeFt: 220 },
  finalApproachFix: { distanceNm: 5 },
};

/**
 * One approach every twenty minutes, at 120 kt: 360 s inbound from 12 NM, then 28 NM round by the north to where it
 * began. Six of them fill a lesson of two hours.
 */
const INBOUND_S = 360;
export const CYCLE_S = 1200;
const START_NM = 12;
const ROUND_BY_M = 23_000;
/** On the way round: at its most to the north, and all the way to the west. */
const ROUND_NORTH_MS = (ROUND_BY_M * Math.PI) / (CYCLE_S - INBOUND_S);
const ROUND_WEST_MS = (START_NM * METRES_PER_NM) / (CYCLE_S - INBOUND_S);
const METRES_PER_DEGREE = 111_320;
const START_MS = Date.UTC(2026, 0, 10, 6);

const HEADER =
  'UTC,Latitude (deg),Longitude (deg),GNSS Altitude (ft MSL),Indicated Altitude (ft),Indicated Airspeed (kt),' +
  'Groundspeed (kt),Track (deg true),Vertical Speed (ft/min),Pitch (deg),Bank (deg),Altimeter Setting (hPa)';

/** Small and fast random numbers, the same on every machine (Mulberry32; public domain, T. Ettinger). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/**
 * A log of `fixes` fixes, about a hundred bytes a line, in blocks of text; seeded. At ten a second a million of them
 * are 28 hours and 84 approaches: more than a recorder keeps in one file.
 */
export function* benchLog(fixes: number, perSecond: number): Generator<string> {
  const random = seeded(20260110);
  const noise = (size: number) => (random() - 0.5) * size;
  yield `${HEADER}\n`;
  let block = '';
  for (let i = 0; i < fixes; i++) {
    const seconds = i / perSecond;
    const inCycle = seconds % CYCLE_S;
    const inbound = inCycle <= INBOUND_S;
    const share = inbound ? inCycle / INBOUND_S : (CYCLE_S - inCycle) / (CYCLE_S - INBOUND_S);
    const toGoNm = START_NM * (1 - share);
    const wayOut = inbound ? 0 : (inCycle - INBOUND_S) / (CYCLE_S - INBOUND_S);
    const northM = 60 * Math.sin(seconds / 40) + ROUND_BY_M * Math.sin(Math.PI * wayOut);
    const latDeg = 0.5 + (northM + noise(0.5)) / METRES_PER_DEGREE;
    const roundMs = Math.hypot(ROUND_NORTH_MS * Math.cos(Math.PI * wayOut), ROUND_WEST_MS);
    const groundspeedKt = inbound ? 120 : roundMs * KNOTS_PER_METRE_PER_SECOND;
    const lonDeg = -25 - (toGoNm * METRES_PER_NM + noise(0.5)) / METRES_PER_DEGREE;
    const pathFt = 70 + toGoNm * 318.4 + 8 * Math.sin(seconds / 25);
    const altitudeFt = (inbound ? Math.min(2500, pathFt) : 2500) + noise(4);
    const time = new Date(START_MS + Math.round(seconds * 1000))
      .toISOString()
      .slice(0, perSecond > 1 ? 21 : 19);
    block +=
      `${time}Z,${latDeg.toFixed(7)},${lonDeg.toFixed(7)},${altitudeFt.toFixed(1)},${(altitudeFt - 12).toFixed(0)},` +
      `${(105 + noise(4)).toFixed(1)},${(groundspeedKt + noise(2)).toFixed(1)},${(inbound ? 90 : 270).toFixed(1)},` +
      `${noise(800).toFixed(0)},${noise(4).toFixed(1)},${noise(10).toFixed(1)},1013\n`;
    if (block.length > 1 << 16) {
      yield block;
      block = '';
    }
  }
  yield block;
}
