import { aliveS } from './localizer-events.ts';
import type { Pass } from './passes.ts';
import { firstWhere, placeOf, range, timeOfZero, type Holds, type Reach } from './searching.ts';
import type { TrueEvent } from './true-approach.ts';
import { RATE, type ViewedFlight } from './viewed-flight.ts';

export function glidepathAliveS(view: ViewedFlight, pass: Pass): number | null {
  const alive: Holds = (i) => 1 - Math.abs(view.glidepath[i]!);
  const first = firstWhere(pass, (i) => view.onLocalizer[i] === 1 && alive(i) >= 0);
  if (first === null) return null;
  if (first === pass.first) return aliveS(view, pass);
  return alive(first - 1) >= 0 ? view.timeS[first]! : timeOfZero(view, alive, first);
}

/** How much the sink limits may be moved where a hair decides. */
const HAIR = 0.03;

/** On both needles and sinking as the path asks, for 10 s. */
export function glidepathIntercept(
  view: ViewedFlight,
  { first, last }: Reach,
  establishedAtS: number | null,
): TrueEvent | null {
  const reach = { first, last: Math.min(last, view.count - 1 - 10 * RATE) };
  const caughtAt = (hair: number): number | null => firstWhere(reach, (k) => caught(view, k, hair));
  const [early, i, late] = [caughtAt(HAIR), caughtAt(0), caughtAt(-HAIR)];
  if (early === null) return null;
  const sides = [early, i ?? early, late ?? last].map((k) => sideBefore(view, first, k, establishedAtS));
  return {
    kind: 'glidepath-intercept',
    timeS: view.timeS[i ?? early]!,
    from: sides.every((side) => side === sides[0]) ? sides[0]! : 'either',
    doubtful: i === null || late === null,
    betweenS: { fromS: view.timeS[early]!, toS: late === null ? Infinity : view.timeS[late]! },
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
  const highest = moments.reduce((most, k) => Math.max(most, view.glidepath[k]!), -Infinity);
  if (Math.abs(highest - 0.5) < HAIR) return 'either';
  return highest > 0.5 ? 'above' : 'below';
}

function caught(view: ViewedFlight, i: number, hair: number): boolean {
  if (view.inbound[i] === 0 || Math.abs(view.glidepath[i]!) > 0.5) return false;
  const span = range(i, i + 10 * RATE);
  const on = (k: number): boolean => Math.abs(view.localizer[k]!) <= 1 && Math.abs(view.glidepath[k]!) <= 0.5;
  if (!span.every(on)) return false;
  const sinkFpm = (view.heightFt[i]! - view.heightFt[i + 10 * RATE]!) * 6;
  const meanKt = span.reduce((sum, k) => sum + view.groundspeedKt[k]!, 0) / span.length;
  const neededFpm = meanKt * 101.27 * Math.tan((view.facility.glidepath.angleDeg * Math.PI) / 180);
  return sinkFpm >= (0.5 - hair) * neededFpm && sinkFpm <= (1.5 + hair) * neededFpm;
}
