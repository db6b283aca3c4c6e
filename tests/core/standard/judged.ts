import { findApproaches } from '../../../core/approach/find-approaches.ts';
import type { FlownApproach } from '../../../core/approach/flown-approach.ts';
import { flownAt } from '../../../core/approach/flown.ts';
import { defineFacility } from '../../../core/analyze.ts';
import { LazyColumn } from '../../../core/numeric/lazy-column.ts';
import { projectTrack } from '../../../core/deviation/project-track.ts';
import type { Quantity } from '../../../core/log/log.ts';
import type { Case } from '../../../core/standard/case.ts';
import { gateDatumFt } from '../../../core/standard/gate-datum.ts';
import { judgeApproach } from '../../../core/standard/judge-approach.ts';
import type {
  ApproachJudgement,
  CriterionJudgement,
  GateJudgement,
} from '../../../core/standard/judgement.ts';
import type { Standard } from '../../../core/standard/standard.ts';
import { DEFAULT_STANDARD, standardById } from '../../../core/standard/standards.ts';
import { NOTHING_STATED, type Stated } from '../../../core/standard/stated.ts';
import { buildTrack } from '../../../core/track/build-track.ts';
import { NO_ERROR } from '../../../core/track/position-error.ts';
import { drawFlight, type Drawing } from '../../support/flight/drawn-flight.ts';
import { STRAIGHT_IN } from '../debrief/drawn.ts';
import { makeLog } from '../track/make-log.ts';

/**
 * When the fix is passed on the flight that is drawn: `STRAIGHT_IN`, 90 kt from 8 NM, 40 s a mile. The path stands 34 + 52 ft at the threshold and rises
 * 318.4 ft a mile, and 0.88 ft a square mile for the earth: it is at 1,700 ft at the fix (5 NM, 120 s), 1,000 ft above
 * the touchdown zone of 40 ft at about 201 s, 500 ft above it at 263 s, 300 ft above it at 288 s, and at the decision
 * altitude of 240 ft at 300.7 s. Final takes 180.7 s, of which 5 % are 9.0 s.
 */
export const FIX_S = 120;

type Values = { readonly [Q in Quantity]?: (timeS: number) => number };

export interface Flying extends Partial<Drawing> {
  readonly standard?: Standard | string;
  /** Spans of the instructor in seconds since the start of the flight. */
  readonly stated?: Partial<Stated>;
  /** Recorded beside the position, by seconds since the start. */
  readonly recorded?: Values;
  /** Seconds between the fixes. */
  readonly everyS?: number;
  /** 95 % half-widths of the needles, fractions of full scale; none when not said. */
  readonly localizerOff?: number;
  readonly glidepathOff?: number;
  /** Of the heights, feet, at gates and at decision altitude and as a sink rate is told by. */
  readonly heightOffFt?: number;
  /** Of a vertical speed that was recorded, ft/min. */
  readonly sinkOffFpm?: number;
  /** Unrecorded seconds. */
  readonly gaps?: readonly (readonly [fromS: number, toS: number])[];
}

export interface Judged extends ApproachJudgement {
  readonly approach: FlownApproach;
  /** When the flight began: moments of the judgement less this are seconds of the drawing. */
  readonly beganS: number;
  criterion(id: string): CriterionJudgement;
  gate(kind: GateJudgement['gate']): GateJudgement;
}

/** The case of a drawn flight with one approach, before it is judged. */
function sittingOf(flying: Flying = {}): Case & { readonly beganS: number } {
  const { standard = DEFAULT_STANDARD, stated, recorded = {}, everyS = 1, gaps = [], ...more } = flying;
  const { localizerOff = 0, glidepathOff = 0, heightOffFt = 0, sinkOffFpm = 0, ...drawing } = more;
  const truth = drawFlight({ ...STRAIGHT_IN, ...drawing });
  const beganS = truth.columns.timeS[0]!;
  const isRecorded = (tenth: number) =>
    tenth % Math.round(everyS * 10) === 0 && !gaps.some(([from, to]) => tenth / 10 > from && tenth / 10 < to);
  const tenths = [...truth.columns.timeS.keys()].filter(isRecorded);
  const pick = (column: Float64Array) => tenths.map((tenth) => column[tenth]!);
  const values = Object.entries(recorded).map(([name, value]) => [
    name,
    tenths.map((tenth) => value(tenth / 10)),
  ]);
  const log = makeLog({
    timeS: pick(truth.columns.timeS),
    latDeg: pick(truth.columns.latDeg),
    lonDeg: pick(truth.columns.lonDeg),
    values: { altitudeGeometricFt: pick(truth.columns.heightFt), ...Object.fromEntries(values) },
  });
  const facility = { ...STRAIGHT_IN, ...drawing }.facility;
  const defined = defineFacility(JSON.stringify(facility), 'facility.json');
  const track = buildTrack(log);
  if (!defined.ok || !track.ok) throw new Error('the drawn flight is refused');
  const { geometry } = defined.value;
  const off = () => heightOffFt;
  const error = {
    ...NO_ERROR,
    timeConstantS: 300,
    decidingFt: off,
    driftFt: off,
    recordedSinkFpm: sinkOffFpm,
  };
  const always = (value: number) => new LazyColumn(track.value.count, (block) => block.fill(value));
  const flown = {
    ...flownAt(track.value, projectTrack(track.value, geometry), geometry, { error }),
    needleError: { localizer: always(localizerOff), glidepath: always(glidepathOff) },
  };
  const held = typeof standard === 'string' ? standardById(standard)! : standard;
  const { approaches } = findApproaches(flown, gateDatumFt(held, geometry));
  if (approaches.length !== 1) throw new Error(`${approaches.length} approaches were drawn`);
  const instructorFlew = (stated?.instructorFlew ?? []).map(({ startS, endS }) => ({
    startS: beganS + startS,
    endS: beganS + endS,
  }));
  return {
    flown,
    approach: approaches[0]!,
    standard: held,
    stated: { ...NOTHING_STATED, ...stated, instructorFlew },
    beganS,
  };
}

export function judged(flying: Flying = {}): Judged {
  const sitting = sittingOf(flying);
  const judgement = judgeApproach(sitting);
  return {
    ...judgement,
    approach: sitting.approach,
    beganS: sitting.beganS,
    criterion: (id) => judgement.criteria.find((criterion) => criterion.id === id)!,
    gate: (kind) => judgement.gates.find(({ gate }) => gate === kind)!,
  };
}

/**
 * A needle at 0 but for one swing to `peak`. It stands as far within `limit` just before and after as `peak` stands
 * beyond, so that with ten fixes a second (`everyS: 0.1`) a `fromS` of x.x5 is crossed to the hundredth.
 */
export function swing(fromS: number, lastsS: number, peak: number, limit = 0.75) {
  const base = 2 * limit * Math.sign(peak) - peak;
  return ({ timeS }: { readonly timeS: number }): number => {
    if (timeS > fromS && timeS < fromS + lastsS) return peak;
    return timeS > fromS - 1 && timeS < fromS + lastsS + 1 ? base : 0;
  };
}

/** Several swings, one after the other. */
export function swings(...each: readonly ReturnType<typeof swing>[]) {
  return (moment: { readonly timeS: number }): number => each.reduce((sum, one) => sum + one(moment), 0);
}

/** Height of the path above sea level so many miles before the threshold, ft. */
export function pathFt(distanceNm: number): number {
  return 86 + distanceNm * 6076.1155 * Math.tan((3 * Math.PI) / 180) + 0.883 * distanceNm ** 2;
}

/** Level at 1,700 ft to the fix, and down the path from there. */
export function levelIntercept({ distanceNm }: { readonly distanceNm: number }): number | null {
  return distanceNm > 5 ? 1700 : null;
}

/**
 * A missed approach at 90 kt, where the path sinks 7.96 ft/s: from a height on it the descent is stopped evenly within
 * `sagFt`, and goes over into a climb of 1,500 ft/min.
 */
export function goAroundFrom(heightFt: number, sagFt: number) {
  const sinkFtPerS = (90 / 3600) * 6076.1155 * Math.tan((3 * Math.PI) / 180);
  const pull = sinkFtPerS ** 2 / 2 / sagFt;
  let fromS: number | null = null;
  return ({ timeS, distanceNm }: { readonly timeS: number; readonly distanceNm: number }): number | null => {
    if (pathFt(distanceNm) > heightFt) return null;
    fromS ??= timeS;
    const s = timeS - fromS;
    const pulledS = Math.min(s, (sinkFtPerS + 25) / pull);
    return heightFt - sinkFtPerS * pulledS + (pull / 2) * pulledS ** 2 + 25 * (s - pulledS);
  };
}
