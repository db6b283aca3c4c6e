import type { FlightTruth } from '../flight/flight-truth.ts';
import { endingOf, type Ending } from './ending.ts';
import { glidepathAliveS, glidepathIntercept } from './glidepath-events.ts';
import { kindOfPass } from './kind-of-pass.ts';
import { aliveS, establishedS, fixPassedS, lostAndFound } from './localizer-events.ts';
import { passesOf, type Pass } from './passes.ts';
import { firstFall, firstWhere, placeOf, range, timeOfZero } from './searching.ts';
import type { TrueApproach, TrueEvent, TrueEventKind } from './true-approach.ts';
import { trueNeedle } from './true-needle.ts';
import { RATE, viewOf, type ViewedFlight } from './viewed-flight.ts';

/**
 * What the program must find in a flight, by the design's section 7 read anew and by brute force over the truth's
 * columns: it shares no line with the program.
 *
 * @param by what gates and decision altitude are judged by: `height` for a log without an altimeter
 */
export function truthOf(flight: FlightTruth, by: 'indicated' | 'height' = 'indicated'): TrueApproach[] {
  const view = viewOf(flight, by);
  return passesOf(view).flatMap((pass) => truthOfPass(view, pass) ?? []);
}

function truthOfPass(view: ViewedFlight, pass: Pass): TrueApproach | null {
  const fixS = fixPassedS(view, pass);
  const settledS = establishedS(view, pass);
  const intercept = glidepathIntercept(view, pass, settledS);
  const kind = kindOfPass(view, pass, { establishedS: settledS, fixS, interceptS: intercept?.timeS ?? null });
  if (kind === null) return null;
  const finalStartS = fixS ?? joinedInsideS(view, pass);
  const ending = endingOf(view, pass, finalStartS);
  const { endS } = ending;
  const low = lowEvents(view, pass, finalStartS, ending);
  const tooLate = kind === 'approach' && settledS !== null && view.distanceNm[placeOf(view, settledS)]! < 3;
  const events = [
    event('localizer-alive', aliveS(view, pass)),
    ...(settledS === null || tooLate ? [] : [event('localizer-established', settledS)]),
    ...(settledS === null || tooLate ? [] : lostAndFound(view, settledS, endS)),
    event('glidepath-alive', glidepathAliveS(view, pass)),
    intercept,
    fixEvent(view, pass, fixS),
    ...low,
  ]
    .filter((e): e is TrueEvent => e !== null && e.timeS <= endS)
    .concat(aroundEvents(view, ending))
    .toSorted((a, b) => a.timeS - b.timeS);
  return { kind, outcome: ending.outcome, events, ...onFinal(view, finalStartS, endS, events) };
}

/** Final of one who comes onto the localizer inside the fix begins there; of one who never comes so near, never. */
function joinedInsideS(view: ViewedFlight, pass: Pass): number | null {
  const inside = view.distanceNm[pass.first]! <= view.facility.finalApproachFix.distanceNm;
  return inside ? aliveS(view, pass) : null;
}

function event(kind: TrueEventKind, timeS: number | null): TrueEvent | null {
  return timeS === null ? null : { kind, timeS, from: null };
}

/** A log may round an altitude by as much. */
const STEP_FT = 0.6;

/** Heights fallen through after final began, the threshold and the ground. */
function lowEvents(
  view: ViewedFlight,
  pass: Pass,
  finalStartS: number | null,
  ending: Ending,
): (TrueEvent | null)[] {
  const { runway, minimums } = view.facility;
  const reach = { first: placeOf(view, finalStartS ?? Infinity), last: placeOf(view, ending.endS) };
  const lowestFt = range(reach.first, reach.last).reduce(
    (low, i) => Math.min(low, view.decidingFt[i]!),
    Infinity,
  );
  const fall = (kind: TrueEventKind, altitudeFt: number): TrueEvent | null => {
    const doubtful = Math.abs(lowestFt - altitudeFt) < STEP_FT;
    const timeS = firstFall(view, reach, (i) => view.decidingFt[i]! - altitudeFt - (doubtful ? STEP_FT : 0));
    return timeS === null ? null : { kind, timeS, from: null, doubtful };
  };
  const across = firstWhere({ first: pass.first + 1, last: reach.last }, (i) => view.distanceNm[i]! <= 0);
  const low = across !== null && meanFt(view, across) < runway.threshold.elevationFt + 200;
  return [
    fall('gate-1000', runway.touchdownZoneElevationFt + 1000),
    fall('gate-500', runway.touchdownZoneElevationFt + 500),
    fall('decision-altitude', minimums.decisionAltitudeFt),
    event(
      low ? 'threshold' : 'abeam-threshold',
      across === null ? null : timeOfZero(view, (i) => view.distanceNm[i]!, across),
    ),
    event('touchdown', ending.touchdown === null ? null : view.timeS[ending.touchdown]!),
  ];
}

function aroundEvents(view: ViewedFlight, { climb }: Ending): TrueEvent[] {
  if (climb === null) return [];
  const { lowest } = climb;
  const low: TrueEvent = {
    kind: 'lowest-point',
    timeS: view.timeS[lowest]!,
    from: null,
    betweenS: nearlyLowestS(view, lowest),
  };
  const start = event('missed-approach-start', startS(view, lowest));
  // Where the lowest point is one of several, the start is looked for back from any of them.
  const { fromS, toS } = low.betweenS!;
  const starts = [startS(view, placeOf(view, fromS)), startS(view, placeOf(view, toS))];
  if (start === null || starts[0] === null || starts[1] === null) return [low];
  return [low, { ...start, betweenS: { fromS: starts[0]!, toS: starts[1]! } }];
}

/** Between a moment and the one before it. */
function meanFt({ heightFt }: ViewedFlight, i: number): number {
  return (heightFt[i - 1]! + heightFt[i]!) / 2;
}

/** A hair decides when the fix is passed within a second of coming onto the localizer or leaving it. */
function fixEvent(view: ViewedFlight, { first, last }: Pass, fixS: number | null): TrueEvent | null {
  if (fixS === null) return null;
  const doubtful = fixS < view.timeS[first]! + 1 || fixS > view.timeS[last]! - 1;
  return { kind: 'final-approach-fix', timeS: fixS, from: null, doubtful };
}

/** Around the lowest point, as long as a log of whole feet may show the same height. */
function nearlyLowestS(view: ViewedFlight, lowest: number): { fromS: number; toS: number } {
  const low = (i: number): boolean => view.heightFt[i]! <= view.heightFt[lowest]! + 1;
  let [from, to] = [lowest, lowest];
  while (from > 0 && low(from - 1)) from--;
  while (to < view.count - 1 && low(to + 1)) to++;
  return { fromS: view.timeS[from]!, toS: view.timeS[to]! };
}

/** Back from the lowest point, the last moment that still sank at half the mean of the 10 s before it. */
function startS(view: ViewedFlight, lowest: number): number | null {
  for (let i = lowest; i >= 10 * RATE; i--) {
    const before = view.sinkFpm.subarray(i - 10 * RATE, i + 1);
    const mean = before.reduce((sum, v) => sum + v, 0) / before.length;
    if (mean > 0 && view.sinkFpm[i]! >= mean / 2) return view.timeS[i]!;
  }
  return null;
}

function onFinal(
  view: ViewedFlight,
  startFinalS: number | null,
  endS: number,
  events: readonly TrueEvent[],
): Pick<TrueApproach, 'final' | 'localizer' | 'glidepath'> {
  if (startFinalS === null) return { final: null, localizer: null, glidepath: null };
  const ends = events.filter(({ kind }) => kind === 'decision-altitude' || kind === 'missed-approach-start');
  const final = { startS: startFinalS, endS: Math.min(endS, ...ends.map(({ timeS }) => timeS)) };
  if (final.endS <= final.startS) return { final: null, localizer: null, glidepath: null };
  return {
    final,
    localizer: trueNeedle(view, view.localizer, final.startS, final.endS),
    glidepath: trueNeedle(view, view.glidepath, final.startS, final.endS),
  };
}
