import { HOLD_HAIR_S, READINGS } from './hair.ts';
import type { Pass } from './passes.ts';
import { firstHeld, firstWhere, placeOf, range, timeOfZero, type Holds, type Reach } from './searching.ts';
import type { TrueEvent } from './true-approach.ts';
import { RATE, type ViewedFlight } from './viewed-flight.ts';

const within =
  (view: ViewedFlight, fullScale: number): Holds =>
  (i) =>
    fullScale - Math.abs(view.localizer[i]!);

export function aliveS(view: ViewedFlight, { first }: Pass): number {
  if (first === 0) return view.timeS[0]!;
  const conditions: Holds[] = [within(view, 1), (i) => 45 - Math.abs(view.courseAngleDeg[i]!)];
  return Math.max(
    ...conditions.map((holds) => (holds(first - 1) >= 0 ? view.timeS[0]! : timeOfZero(view, holds, first))),
  );
}

/** Between the scale read a hair wider and a hair narrower. */
export function alive(view: ViewedFlight, pass: Pass): TrueEvent {
  const hair = (i: number): number => view.hair.sideFt / view.localizerScaleFt[i]!;
  let early = pass.first;
  while (
    early > 0 &&
    view.inbound[early - 1] === 1 &&
    Math.abs(view.localizer[early - 1]!) <= 1 + hair(early - 1)
  )
    early--;
  const late = firstWhere(
    pass,
    (i) => view.onLocalizer[i] === 1 && Math.abs(view.localizer[i]!) <= 1 - hair(i),
  );
  const timeS = aliveS(view, pass);
  return {
    kind: 'localizer-alive',
    timeS,
    from: null,
    betweenS: {
      fromS: Math.min(timeS, view.timeS[early]!),
      toS: late === null ? Infinity : view.timeS[late]!,
    },
  };
}

/** Within half scale and within 10° of the course for 10 s, before the threshold; each a hair wider or narrower. */
export function establishedS(
  view: ViewedFlight,
  reach: Reach,
  by: number = READINGS.asItStands,
): number | null {
  const { angleDeg } = view.hair;
  const angle: Holds = (i) => 10 + by * angleDeg - Math.abs(view.courseAngleDeg[i]!);
  const needle: Holds = (i) =>
    0.5 + (by * view.hair.sideFt) / view.localizerScaleFt[i]! - Math.abs(view.localizer[i]!);
  return firstHeld(view, reach, [(i) => view.distanceNm[i]!, needle, angle], 10 - by * HOLD_HAIR_S);
}

/** Between the readings of it; null when it never happened, however read. */
export function established(view: ViewedFlight, pass: Pass): TrueEvent | null {
  const [widerS, timeS, narrowerS] = [READINGS.wider, READINGS.asItStands, READINGS.narrower].map((by) =>
    establishedS(view, pass, by),
  );
  if (widerS === null || widerS === undefined) return null;
  return {
    kind: 'localizer-established',
    timeS: timeS ?? widerS,
    from: null,
    doubtful: narrowerS === null,
    betweenS: { fromS: widerS, toS: narrowerS ?? Infinity },
  };
}

/** Within full scale with the track within 30° for a minute, and so inbound when passing the fix. */
export function flownThroughFix(view: ViewedFlight, pass: Pass, fixS: number | null): boolean {
  if (fixS === null || view.onLocalizer[placeOf(view, fixS)] === 0) return false;
  const angle: Holds = (i) => 30 - Math.abs(view.courseAngleDeg[i]!);
  return firstHeld(view, pass, [(i) => view.distanceNm[i]!, within(view, 1), angle], 60) !== null;
}

/** The fix's distance passed inbound, the last time in this pass. */
export function fixPassedS(view: ViewedFlight, pass: Pass): number | null {
  const left: Holds = (i) => view.distanceNm[i]! - view.facility.finalApproachFix.distanceNm;
  const passages = range(pass.first + 1, pass.last).filter(
    (i) => left(i) <= 0 && left(i - 1) > 0 && view.inbound[i] === 1,
  );
  const last = passages.at(-1);
  return last === undefined ? null : timeOfZero(view, left, last);
}

/** Lost and found again, by turns, between the first establishment and the end of the approach. */
export function lostAndFound(view: ViewedFlight, establishedAtS: number, endS: number): TrueEvent[] {
  const events: TrueEvent[] = [];
  const last = placeOf(view, endS);
  const conditions: Holds[] = [(i) => view.distanceNm[i]!, (i) => Math.abs(view.localizer[i]!) - 1];
  for (let fromS = establishedAtS; ;) {
    const lostS = firstHeld(view, { first: placeOf(view, fromS), last }, conditions, 3);
    if (lostS === null || lostS >= endS) return events;
    events.push({ kind: 'localizer-lost', timeS: lostS, from: null });
    const foundS = establishedS(view, { first: placeOf(view, lostS), last });
    if (foundS === null || foundS >= endS) return events;
    events.push({ kind: 'localizer-re-established', timeS: foundS, from: null });
    fromS = foundS;
  }
}

/**
 * The first moment of going beyond full scale for 5 s, begun before the threshold is first passed, after which this
 * pass is never on the localizer again.
 */
export function leavingS(view: ViewedFlight, pass: Pass): number | null {
  const beyond: Holds = (i) => Math.abs(view.localizer[i]!) - 1;
  const passed = firstWhere({ first: pass.last, last: pass.until }, (i) => view.distanceNm[i]! <= 0);
  const last = (passed ?? pass.until + 1) - 1;
  if (last - pass.last < 1) return null;
  return firstHeld(view, { first: pass.last, last: Math.min(last, view.count - 1 - 5 * RATE) }, [beyond], 5);
}
