import { metresPerDegree } from '../earth/frame.ts';
import { firstAfter, type Polyline } from '../numeric/polyline.ts';
import { METRES_PER_NM, wrap180 } from '../units/units.ts';
import type { Track } from './track.ts';

type Positions = Pick<Track, 'timeS' | 'latDeg' | 'lonDeg'>;

/** As long as the ground track is taken over: from fix to fix of a fast log, the jitter of positions adds up. */
const CHORD_S = 5;

/**
 * Nautical miles flown over the ground since each line began, in lines of the same times: straight and at one speed
 * over 5 s, or from one fix to the next where that is longer.
 *
 * @param lines cut out of columns of this track, as `clip` does it
 */
export function flownDistanceNm(track: Positions, lines: readonly Polyline[]): Polyline[] {
  return lines.map(({ timeS }) => {
    const first = firstAfter(track.timeS, timeS[0]!) - 1;
    const last = timeS.length - 1;
    const value = new Float64Array(timeS.length);
    let from = 0;
    for (let to = 1; to <= last; to++) {
      const durationS = track.timeS[first + to]! - track.timeS[first + from]!;
      if (durationS < CHORD_S && to < last) continue;
      const nmPerS = betweenNm(track, first + from, first + to) / durationS;
      // By its own times: a line begins and ends anywhere between two fixes.
      for (let k = from + 1; k <= to; k++) value[k] = value[k - 1]! + nmPerS * (timeS[k]! - timeS[k - 1]!);
      from = to;
    }
    return { timeS, value };
  });
}

/** By a degree's length half way: over a few seconds that is exact to a millimetre. */
function betweenNm({ latDeg, lonDeg }: Positions, from: number, to: number): number {
  const { latM, lonM } = metresPerDegree((latDeg[from]! + latDeg[to]!) / 2);
  const northM = (latDeg[to]! - latDeg[from]!) * latM;
  const eastM = wrap180(lonDeg[to]! - lonDeg[from]!) * lonM;
  return Math.sqrt(northM * northM + eastM * eastM) / METRES_PER_NM;
}
