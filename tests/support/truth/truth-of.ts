import { FEET_PER_NM } from '../../../core/units/units.ts';
import { beamTruth } from '../flight/beam-truth.ts';
import { endingOf, type Ending } from './ending.ts';
import { glidepathAliveS, glidepathIntercept } from './glidepath-events.ts';
import { READINGS, type Hair } from './hair.ts';
import { kindOfPass } from './kind-of-pass.ts';
import { alive, aliveS, established, establishedS, fixPassedS, lostAndFound } from './localizer-events.ts';
import { passesOf, type Pass } from './passes.ts';
import { firstFall, firstWhere, placeOf, range, timeOfZero, type Holds, type Reach } from './searching.ts';
import type { TrueApproach, TrueEvent, TrueEventKind } from './true-approach.ts';
import { trueNeedle } from './true-needle.ts';
import { RATE, readTo, type FlightView, type ViewedFlight } from './viewed-flight.ts';

/**
 * What the program must find in a flight, by the design's section 7 read anew and by brute force over the truth's
 * columns: it shares no line with the program.
 *
 * @param by what gates and decision altitude are judged by: `height` for a log without an altimeter
 * @param hair how much of a rule is left to the log's digits, or to its receiver
 */
export function truthOf(flight: FlightView, by: 'indicated' | 'height', hair: Hair): TrueApproach[] {
  const view = readTo(flight, by, hair);
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
    alive(view, pass),
    tooLate ? null : established(view, pass),
    ...(settledS === null || tooLate ? [] : lostAndFound(view, settledS, endS)),
    event('glidepath-alive', glidepathAliveS(view, pass)),
    intercept,
    fixEvent(view, pass, fixS),
    ...low,
  ]
    .filter((e): e is TrueEvent => e !== null && e.timeS <= endS + NEAR_END_S)
    .map((e) =>
      Math.abs(e.timeS - endS) < NEAR_END_S && e.kind !== 'touchdown' ? { ...e, doubtful: true } : e,
    )
    .concat(aroundEvents(view, ending, finalStartS))
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

/** So near to its end, whether a moment still belongs to an approach hangs by a hair. */
const NEAR_END_S = 1;

/** Heights fallen through after final began, the threshold and the ground. */
function lowEvents(
  view: ViewedFlight,
  pass: Pass,
  finalStartS: number | null,
  ending: Ending,
): (TrueEvent | null)[] {
  const { runway, minimums } = view.facility;
  const hairFt = view.by === 'indicated' ? view.hair.indicatedFt : view.hair.heightFt;
  const reach = { first: placeOf(view, finalStartS ?? Infinity), last: placeOf(view, ending.endS) };
  const fall = (kind: TrueEventKind, altitudeFt: number): TrueEvent | null => {
    const through = (by: number) =>
      firstFall(view, reach, (i) => view.decidingFt[i]! - altitudeFt - by * hairFt);
    const earlyS = through(READINGS.wider);
    const lateS = through(READINGS.narrower);
    if (earlyS === null) return null;
    const timeS = through(READINGS.asItStands) ?? earlyS;
    const betweenS = { fromS: earlyS, toS: lateS ?? Infinity };
    return { kind, timeS, from: null, doubtful: lateS === null, betweenS };
  };
  const lastAcross = Math.min(reach.last + NEAR_END_S * RATE, view.count - 1);
  const across = firstWhere({ first: pass.first + 1, last: lastAcross }, (i) => view.distanceNm[i]! <= 0);
  const acrossS = across === null ? null : timeOfZero(view, (i) => view.distanceNm[i]!, across);
  const crossingFt = acrossS === null ? NaN : heightFtAt(view, acrossS) - runway.threshold.elevationFt;
  return [
    fall('gate-1000', runway.touchdownZoneElevationFt + 1000),
    fall('gate-500', runway.touchdownZoneElevationFt + 500),
    fall('decision-altitude', minimums.decisionAltitudeFt),
    ...crossingEvents(crossingFt, view.hair.heightFt, acrossS),
    touchdownEvent(view, pass, ending.touchdown),
  ];
}

/** Passed lower than 200 ft is the threshold; a hair about it, either. */
function crossingEvents(crossingFt: number, hairFt: number, timeS: number | null): TrueEvent[] {
  if (timeS === null) return [];
  const doubtful = Math.abs(crossingFt - 200) < hairFt;
  const kinds = (['threshold', 'abeam-threshold'] as const).filter(
    (kind) => doubtful || (kind === 'threshold') === crossingFt < 200,
  );
  return kinds.map((kind) => ({ kind, timeS, from: null, doubtful }));
}

/** Who floats within 3 ft of the runway is, by the heights of the roll, on it: from the first such moment. */
const FLOAT_FT = 3;

function touchdownEvent(view: ViewedFlight, pass: Pass, touchdown: number | null): TrueEvent | null {
  if (touchdown === null) return null;
  const over = firstWhere({ first: pass.first, last: touchdown }, (i) => view.distanceNm[i]! <= 0)!;
  const aboveFt = (i: number): number => heightAboveRunwayFt(view, i) - heightAboveRunwayFt(view, touchdown);
  const downS = (by: number): number => {
    const within: Holds = (i) => aboveFt(i) - FLOAT_FT - by * view.hair.stepFt;
    const i = firstWhere({ first: over, last: touchdown }, (k) => within(k) <= 0)!;
    return i === over ? view.timeS[i]! : timeOfZero(view, within, i);
  };
  return {
    kind: 'touchdown',
    timeS: downS(READINGS.asItStands),
    from: null,
    wheelsS: view.timeS[touchdown]!,
    betweenS: { fromS: downS(READINGS.wider), toS: downS(READINGS.narrower) },
  };
}

/** Above the straight line from the threshold to the far end. */
function heightAboveRunwayFt(view: ViewedFlight, i: number): number {
  const { threshold, farEnd } = view.facility.runway;
  const along = (-view.distanceNm[i]! * FEET_PER_NM) / beamTruth(view.facility).runwayLengthFt;
  return view.heightFt[i]! - threshold.elevationFt - along * (farEnd.elevationFt - threshold.elevationFt);
}

function aroundEvents(view: ViewedFlight, { climb }: Ending, finalStartS: number | null): TrueEvent[] {
  if (climb === null) return [];
  const { lowest } = climb;
  const lows = lowestPlaces(view, climb, finalStartS);
  const low: TrueEvent = {
    kind: 'lowest-point',
    timeS: view.timeS[lowest]!,
    from: null,
    betweenS: { fromS: view.timeS[lows.first]!, toS: view.timeS[lows.last]! },
  };
  const timeS = startS(view, lowest, READINGS.asItStands);
  // Where the lowest point is one of several, the start is looked for back from any of them.
  const fromS = startS(view, lows.first, READINGS.narrower) ?? view.timeS[0]!;
  const toS = startS(view, lows.last, READINGS.wider);
  if (toS === null) return [low];
  const start = {
    kind: 'missed-approach-start',
    timeS: timeS ?? toS,
    from: null,
    doubtful: timeS === null,
  } as const;
  return [low, { ...start, betweenS: { fromS, toS } }];
}

function heightFtAt(view: ViewedFlight, s: number): number {
  const i = placeOf(view, s);
  const share = (s - view.timeS[i]!) * RATE;
  return view.heightFt[i]! + share * ((view.heightFt[i + 1] ?? NaN) - view.heightFt[i]!);
}

/** A hair decides when the fix is passed within a second of coming onto the localizer or leaving it. */
function fixEvent(view: ViewedFlight, { first, last }: Pass, fixS: number | null): TrueEvent | null {
  if (fixS === null) return null;
  const doubtful = fixS < view.timeS[first]! + 1 || fixS > view.timeS[last]! - 1;
  return { kind: 'final-approach-fix', timeS: fixS, from: null, doubtful };
}

/** The first and the last place, between final's begin and the climb away, that a log may show as the lowest. */
function lowestPlaces(
  view: ViewedFlight,
  { lowest, risen }: NonNullable<Ending['climb']>,
  finalStartS: number | null,
): Reach {
  const low = range(placeOf(view, finalStartS ?? view.timeS[0]!), risen).filter(
    (i) => view.heightFt[i]! <= view.heightFt[lowest]! + view.hair.stepFt,
  );
  return { first: low[0]!, last: low.at(-1)! };
}

/** Back from a lowest point, the last moment that still sank at half the mean of the 10 s before it; by a hair. */
function startS(view: ViewedFlight, lowest: number, by: number): number | null {
  const hairFpm = by * view.hair.sinkFpm;
  const line = by === READINGS.asItStands ? 'plain' : by === READINGS.wider ? 'most' : 'least';
  for (let i = lowest; i >= 10 * RATE; i--) {
    const before = range(i - 10 * RATE, i);
    const meanFpm = before.reduce((sum, k) => sum + view.sinkFpm(k).plain, 0) / before.length;
    if (meanFpm > -hairFpm && view.sinkFpm(i)[line] >= meanFpm / 2 - hairFpm) return view.timeS[i]!;
  }
  return null;
}

const ENDS_FINAL: ReadonlySet<TrueEventKind> = new Set([
  'decision-altitude',
  'missed-approach-start',
  'threshold',
  'abeam-threshold',
]);

function onFinal(
  view: ViewedFlight,
  startFinalS: number | null,
  endS: number,
  events: readonly TrueEvent[],
): Pick<TrueApproach, 'final' | 'localizer' | 'glidepath'> {
  if (startFinalS === null) return { final: null, localizer: null, glidepath: null };
  const ends = events.filter(({ kind }) => ENDS_FINAL.has(kind));
  const sure = ends.filter(({ doubtful }) => !doubtful);
  // The flight's last whole second: a log of one fix a second ends there.
  const lastFixS = view.timeS[view.count - 1 - ((view.count - 1) % RATE)]!;
  const final = {
    startS: startFinalS,
    endS: Math.min(endS, lastFixS, ...ends.map(({ timeS }) => timeS)),
    endBetweenS: {
      fromS: Math.min(endS, lastFixS, ...ends.map(({ timeS, betweenS }) => betweenS?.fromS ?? timeS)),
      toS: Math.min(endS, ...sure.map(({ timeS, betweenS }) => betweenS?.toS ?? timeS)),
    },
  };
  if (final.endS <= final.startS) return { final: null, localizer: null, glidepath: null };
  return {
    final,
    localizer: trueNeedle(view, view.localizer, final.startS, final.endS),
    glidepath: trueNeedle(view, view.glidepath, final.startS, final.endS),
  };
}
