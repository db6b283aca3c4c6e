import { HOLD_HAIR_S, READINGS } from './hair.ts';
import { aliveS } from './localizer-events.ts';
import type { Pass } from './passes.ts';
import {
  everywhere,
  firstWhere,
  meanOver,
  placeOf,
  range,
  timeOfZero,
  type Holds,
  type Reach,
} from './searching.ts';
import type { TrueEvent } from './true-approach.ts';
import { RATE, type ViewedFlight } from './viewed-flight.ts';

export function glidepathAliveS(view: ViewedFlight, pass: Pass): number | null {
  const alive: Holds = (i) => 1 - Math.abs(view.glidepath[i]!);
  const first = firstWhere(pass, (i) => view.onLocalizer[i] === 1 && alive(i) >= 0);
  if (first === null) return null;
  if (first === pass.first) return aliveS(view, pass);
  return alive(first - 1) >= 0 ? view.timeS[first]! : timeOfZero(view, alive, first);
}

/** A tenth of a knot of sixty: a log's last digit of the groundspeed, which says what sink is needed. */
const SPEED_SHARE = 0.002;

/** On both needles and sinking as the path asks, for 10 s. */
export function glidepathIntercept(
  view: ViewedFlight,
  { first, last }: Reach,
  establishedAtS: number | null,
): TrueEvent | null {
  const reach = {
    first,
    last: Math.min(last, view.count - 1 - Math.ceil(10 + HOLD_HAIR_S + view.hair.intervalS) * RATE),
  };
  const caughtAt = (by: number, forS: number): number | null =>
    firstWhere(reach, (k) => everywhere({ first: k, last: k + forS * RATE }, (m) => caught(view, m, by)));
  const wider = caughtAt(READINGS.wider, 0);
  if (wider === null) return null;
  const asItStands = caughtAt(READINGS.asItStands, 0);
  // A fix may miss a chance that is shorter than from one to the next.
  const narrower = caughtAt(READINGS.narrower, view.hair.intervalS);
  const at = asItStands ?? wider;
  const sides = [wider, at, narrower ?? last].map((k) => sideBefore(view, first, k, establishedAtS));
  return {
    kind: 'glidepath-intercept',
    timeS: view.timeS[at]!,
    from: sides.every((side) => side === sides[0]) ? sides[0]! : 'either',
    doubtful: asItStands === null || narrower === null,
    betweenS: { fromS: view.timeS[wider]!, toS: narrower === null ? Infinity : view.timeS[narrower]! },
  };
}

/** Above half a scale in the minute before, or when settling on the localizer before; a hair about it is either. */
function sideBefore(
  view: ViewedFlight,
  first: number,
  caughtAt: number,
  establishedAtS: number | null,
): 'above' | 'below' | 'either' {
  const moments = range(Math.max(first, caughtAt - 60 * RATE), caughtAt);
  const established = establishedAtS === null ? Infinity : placeOf(view, establishedAtS);
  if (established <= caughtAt) moments.push(established);
  const above = (by: number): boolean =>
    moments.some((k) => view.glidepath[k]! + (by * view.hair.heightFt) / view.glidepathScaleFt[k]! > 0.5);
  if (above(READINGS.narrower)) return 'above';
  return above(READINGS.wider) ? 'either' : 'below';
}

function caught(view: ViewedFlight, i: number, by: number): boolean {
  const on = (k: number): boolean =>
    Math.abs(view.localizer[k]!) <= 1 + (by * view.hair.sideFt) / view.localizerScaleFt[k]! &&
    Math.abs(view.glidepath[k]!) <= 0.5 + (by * view.hair.heightFt) / view.glidepathScaleFt[k]!;
  if (view.inbound[i] === 0 || !on(i)) return false;
  if (!everywhere({ first: i, last: i + Math.round((10 - by * HOLD_HAIR_S) * RATE) }, on)) return false;
  const last = i + 10 * RATE;
  const sinkFpm = ((view.heightFt[i]! - view.heightFt[last]!) * 60 * RATE) / (last - i);
  const meanKt = meanOver({ first: i, last }, view.groundspeedKt);
  const neededFpm = meanKt * 101.27 * Math.tan((view.facility.glidepath.angleDeg * Math.PI) / 180);
  const hairFpm = by * (SPEED_SHARE * neededFpm + view.hair.stepFt * 6);
  return sinkFpm >= 0.5 * neededFpm - hairFpm && sinkFpm <= 1.5 * neededFpm + hairFpm;
}
