import { beamTruth } from '../flight/beam-truth.ts';
import type { PlannedOutcome } from '../flight/flight-plan.ts';
import { leavingS } from './localizer-events.ts';
import type { Pass } from './passes.ts';
import { firstWhere, placeOf, range } from './searching.ts';
import { RATE, type ViewedFlight } from './viewed-flight.ts';

const CLIMB_FT = 300;
/** A climb begun later after leaving belongs to what came next. */
const LATEST_CLIMB_S = 10;

interface Climb {
  readonly lowest: number;
  readonly risen: number;
}

export interface Ending {
  readonly outcome: PlannedOutcome;
  readonly leavingS: number | null;
  readonly touchdown: number | null;
  /** Of a missed or low approach. */
  readonly climb: Climb | null;
  readonly endS: number;
}

export function endingOf(view: ViewedFlight, pass: Pass, finalStartS: number | null): Ending {
  const goneS = leavingS(view, pass);
  const down = touchdownOf(view, pass);
  const up = finalStartS === null || down !== null ? null : climbOf(view, pass, finalStartS);
  const late = goneS !== null && up !== null && view.timeS[up.lowest]! > goneS + LATEST_CLIMB_S;
  // Straight on to the runway, or to a climb, beyond full scale: the localizer was lost, not left.
  const end = down ?? (late ? up.lowest : null);
  const straightOn =
    goneS !== null &&
    end !== null &&
    range(placeOf(view, goneS) + 1, end).every((i) => Math.abs(view.courseAngleDeg[i]!) <= 45);
  const leftS = straightOn ? null : goneS;
  const touchdown = leftS === null ? down : null;
  const climb = leftS !== null && late ? null : up;
  const outcome = outcomeOf(view, pass, { leftS, touchdown, climb });
  const goneAround = outcome === 'missed-approach' || outcome === 'low-approach' ? climb : null;
  const ends = [
    touchdown === null ? Infinity : view.timeS[touchdown]!,
    goneAround ? view.timeS[goneAround.risen]! : Infinity,
    leftS ?? Infinity,
    view.timeS[view.count - 1]!,
  ];
  return { outcome, leavingS: leftS, touchdown, climb: goneAround, endS: Math.min(...ends) };
}

function outcomeOf(
  view: ViewedFlight,
  pass: Pass,
  { leftS, touchdown, climb }: { leftS: number | null; touchdown: number | null; climb: Climb | null },
): PlannedOutcome {
  const zoneFt = view.facility.runway.touchdownZoneElevationFt;
  if (touchdown !== null) return liftedOff(view, pass, touchdown) ? 'touch-and-go' : 'landed';
  if (climb) {
    if (view.decidingFt[climb.lowest]! < view.facility.minimums.decisionAltitudeFt - 50)
      return 'low-approach';
    if (view.heightFt[climb.lowest]! < zoneFt + 1000) return 'missed-approach';
    if (range(climb.lowest, climb.risen).every((i) => Math.abs(view.localizer[i]!) <= 1))
      return 'missed-approach';
  }
  if (leftS === null) return 'incomplete';
  if (view.heightFt[placeOf(view, leftS)]! >= zoneFt + 1000) return 'broken-off';
  return landedBeside(view, pass, leftS) ? 'sidestepped' : 'circled';
}

/** When the wheels touched of a landing that was at some time within the runway's outline. */
function touchdownOf(view: ViewedFlight, { last, until }: Pass): number | null {
  const outline = view.facility.runway.widthFt / 2;
  const rolling = firstWhere({ first: last, last: until }, (i) => {
    return view.onGround[i] === 1 && view.distanceNm[i]! <= 0 && Math.abs(view.centrelineFt[i]!) <= outline;
  });
  if (rolling === null) return null;
  let touched = rolling;
  while (view.onGround[touched - 1] === 1) touched--;
  return touched;
}

/** Up again by 300 ft within two minutes of the runway, never slower than 20 kt on it. */
function liftedOff(view: ViewedFlight, { until }: Pass, touchdown: number): boolean {
  const aloft = firstWhere({ first: touchdown, last: until }, (i) => view.onGround[i] === 0);
  if (aloft === null) return false;
  if (range(touchdown, aloft - 1).some((i) => view.groundspeedKt[i]! < 20)) return false;
  const inTime = { first: aloft, last: Math.min(until, aloft + 120 * RATE) };
  return firstWhere(inTime, (i) => view.heightFt[i]! >= view.heightFt[aloft - 1]! + CLIMB_FT) !== null;
}

/** The first climb of 300 ft after final began, from its lowest point. */
function climbOf(view: ViewedFlight, pass: Pass, finalStartS: number): Climb | null {
  let lowest = placeOf(view, finalStartS);
  for (let i = lowest; i <= pass.until; i++) {
    if (view.heightFt[i]! < view.heightFt[lowest]!) lowest = i;
    if (view.heightFt[i]! >= view.heightFt[lowest]! + CLIMB_FT) return { lowest, risen: i };
  }
  return null;
}

function landedBeside(view: ViewedFlight, { until }: Pass, leftS: number): boolean {
  const outline = view.facility.runway.widthFt / 2;
  const lengthNm = beamTruth(view.facility).runwayLengthFt / 6076.1155;
  const down = firstWhere({ first: placeOf(view, leftS), last: until }, (i) => view.onGround[i] === 1);
  if (down === null) return false;
  const alongside = view.distanceNm[down]! < 0 && view.distanceNm[down]! > -lengthNm;
  return (
    alongside && Math.abs(view.centrelineFt[down]!) > outline && Math.abs(view.courseAngleDeg[down]!) <= 30
  );
}
