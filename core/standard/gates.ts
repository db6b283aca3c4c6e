import { excursionsOff, type Off } from '../approach/excursions.ts';
import { unseenPassage } from '../approach/flown-approach.ts';
import { NEAR_FULL_SCALE } from '../approach/needle-measures.ts';
import { followedSinkErrorFpm } from '../approach/sink-error.ts';
import { OFFSET_LOCALIZER_DEG } from '../facility/impossible-values.ts';
import type { Span } from '../numeric/polyline.ts';
import { airspeedOf } from './airspeed.ts';
import {
  endedBy,
  finalOf,
  halfWidthsIn,
  type HalfWidth,
  instructorFlewAt,
  moment,
  PASSED_UNSEEN,
  recordedIn,
  unfinished,
  withoutInstructor,
  type Case,
} from './case.ts';
import { countingGate } from './counting-gate.ts';
import { fallsToS } from './falling.ts';
import { goAroundBegunS } from './go-around-begun.ts';
import { hiddenS } from './hidden.ts';
import { itemsAtGate, sinkLimit } from './gate-items.ts';
import type {
  CriterionJudgement,
  GateItem,
  GateJudgement,
  ItemFinding,
  LostItem,
  Verdict,
} from './judgement.ts';
import { notAssessed } from './not-assessed.ts';
import { airspeedLimit, speedTarget } from './speed-target.ts';
import type { Limit } from './standard.ts';
import { seconds } from './words.ts';

/** Outside for this long after a gate: no longer stable (design, section 9). */
const LOST_S = 3;
/** All but the glidepath must stay stable down to this height above the threshold. */
const STABLE_TO_FT = 100;
const NEAR = {
  localizer: NEAR_FULL_SCALE,
  glidepath: NEAR_FULL_SCALE,
  airspeed: 1,
  sink: 50,
  bank: 1,
} as const;
/** Fixes farther apart than this cannot show stability. */
const SLOWEST_S = 3;

/** Both gates of one approach: what held at each, and what was lost after it. */
export function judgeGates(sitting: Case): GateJudgement[] {
  const { instrumentFt, visualFt } = sitting.standard.gates;
  return [judgeGate(sitting, 'gate-1000', instrumentFt), judgeGate(sitting, 'gate-500', visualFt)];
}

function judgeGate(sitting: Case, gate: GateJudgement['gate'], heightFt: number): GateJudgement {
  const timeS = moment(sitting, gate);
  const silent = (why: string): GateJudgement => ({
    gate,
    heightFt,
    timeS,
    counts: countingGate(sitting).kind === gate,
    items: [],
    lostAfter: [],
    doubtedAfter: [],
    verdict: 'not-assessed',
    why,
  });
  const tooSlow = sitting.flown.track.medianIntervalS > SLOWEST_S;
  if (tooSlow) return silent('fixes are more than 3 s apart');
  const passedS = timeS ?? unseenPassage(sitting.approach, gate)?.startS ?? null;
  if (passedS === null) return silent('not descended through on final');
  if (passedS >= (goAroundBegunS(sitting) ?? Infinity)) return silent('a missed approach was begun above it');
  if (timeS === null) return silent(PASSED_UNSEEN);
  if (instructorFlewAt(sitting, timeS)) return silent('the instructor flew');
  const items = itemsAtGate(sitting, timeS);
  return { ...silent(''), items, ...lostItems(sitting, timeS), ...verdictAt(items) };
}

function verdictAt(items: readonly ItemFinding[]): { verdict: Verdict; why: string } {
  const of = (verdict: Verdict) => items.filter((item) => item.verdict === verdict);
  const words = (found: readonly ItemFinding[]) => found.map(({ item, why }) => `${item} ${why}`).join('; ');
  const failed = of('not-met');
  if (failed.length > 0) return { verdict: 'not-met', why: words(failed) };
  const unseen = of('not-assessed').filter(({ item }) => item !== 'bank' && item !== 'airspeed');
  if (unseen.length > 0)
    return { verdict: 'not-assessed', why: `${unseen.map(({ item }) => item).join(', ')} not recorded` };
  if (of('not-assessed').length === items.length)
    return { verdict: 'not-assessed', why: 'nothing of it was recorded' };
  const unclear = of('unclear');
  if (unclear.length > 0) return { verdict: 'unclear', why: words(unclear) };
  return { verdict: 'met', why: 'stable as far as this log shows' };
}

/** What is followed after a gate: one item's column, to where, and how far off it may be. */
interface Followed {
  readonly item: GateItem;
  readonly limit: Limit | null;
  readonly column: Float64Array | undefined;
  readonly toS: number;
  /** From a column's value to what the limit is of. */
  readonly as?: (value: number) => number;
  readonly halfWidth?: HalfWidth;
}

function followedAfter(sitting: Case, gateS: number): Followed[] {
  const { flown, standard, stated } = sitting;
  const { track, deviations, needleError } = flown;
  const { gates } = standard;
  const finalEndS = finalOf(sitting)?.endS ?? gateS;
  const lowS = Math.min(lowPointS(sitting, gateS), lastS(sitting));
  // A target for final is left for the landing's speed once the runway is in sight; Vref is that speed.
  const speedS = gates.speedBasis === 'vref' ? lowS : finalEndS;
  // An offset course leads to no threshold: below decision altitude the aircraft has to leave it.
  const isOffset = Math.abs(flown.facility.courseOffsetDeg) > OFFSET_LOCALIZER_DEG;
  const target = speedTarget(gates.speedBasis, stated);
  const airspeed = airspeedOf(sitting);
  const isJudged = !('why' in target) && !('why' in airspeed);
  return [
    {
      item: 'localizer',
      limit: gates.localizer,
      column: deviations.localizerFullScale,
      toS: isOffset ? finalEndS : lowS,
      halfWidth: needleError.localizer,
    },
    {
      item: 'glidepath',
      limit: gates.glidepath,
      column: deviations.glidepathFullScale,
      toS: finalEndS,
      halfWidth: needleError.glidepath,
    },
    {
      item: 'airspeed',
      limit: isJudged ? airspeedLimit(sitting, gates.airspeed) : null,
      column: 'why' in airspeed ? undefined : airspeed.column,
      toS: speedS,
      as: (kt) => kt - ('why' in target ? NaN : target.kt),
      halfWidth: () => ('why' in airspeed ? 0 : airspeed.halfWidthKt),
    },
    {
      item: 'sink',
      limit: sinkLimit(sitting, gateS),
      column: track.verticalSpeedFpm,
      toS: lowS,
      as: (fpm) => -fpm,
      halfWidth: (i) => followedSinkErrorFpm(flown, i),
    },
    { item: 'bank', limit: gates.bankDeg, column: track.recorded.bankDeg, toS: lowS },
  ];
}

/** Where sink is followed after a gate that could be judged, and its limit there; null without one. */
export function sinkFollowed(
  sitting: Case,
  gateS: number,
): { readonly limit: Limit | null; readonly spans: readonly Span[] } {
  const { limit, toS } = followedAfter(sitting, gateS).find(({ item }) => item === 'sink')!;
  return { limit, spans: withoutInstructor(sitting, { startS: gateS, endS: toS }) };
}

/** What was outside for 3 s or more after a gate, and what may have been. */
function lostItems(sitting: Case, gateS: number): Pick<GateJudgement, 'lostAfter' | 'doubtedAfter'> {
  const lostAfter: LostItem[] = [];
  const doubtedAfter: GateItem[] = [];
  for (const followed of followedAfter(sitting, gateS)) {
    const { item } = followed;
    const most = spellsOf(sitting, gateS, followed, 1);
    if (most.length === 0) continue;
    const [least, best] = ([-1, 0] as const).map((off) => spellsOf(sitting, gateS, followed, off));
    const overlaps = (spell: Span) =>
      least!.some((one) => one.startS < spell.endS && spell.startS < one.endS);
    for (const { startS, endS } of best!)
      lostAfter.push({ item, startS, endS, isProven: overlaps({ startS, endS }) });
    if (best!.length === 0) doubtedAfter.push(item);
  }
  return { lostAfter: lostAfter.toSorted((a, b) => a.startS - b.startS), doubtedAfter };
}

function spellsOf(sitting: Case, gateS: number, followed: Followed, off: Off): readonly Span[] {
  const { item, limit, column, toS, as, halfWidth } = followed;
  if (limit === null || !column) return [];
  const isLeft = endedBy(sitting) === 'leaving';
  const spans = withoutInstructor(sitting, { startS: gateS, endS: toS });
  const recorded = recordedIn(sitting, column, spans);
  const parts = as ? recorded.map(({ timeS, value }) => ({ timeS, value: value.map(as) })) : recorded;
  const halfWidths = halfWidth ? halfWidthsIn(sitting, column, halfWidth, spans) : [];
  return excursionsOff(parts, halfWidths, limit, NEAR[item], off).filter(
    ({ outsideS, endS }) => outsideS >= LOST_S && !(isLeft && endS >= toS),
  );
}

/** Stability is over when a missed approach begins, and with the approach. */
function lastS(sitting: Case): number {
  return Math.min(moment(sitting, 'missed-approach-start') ?? Infinity, sitting.approach.endS);
}

function lowPointS({ flown, approach }: Case, fromS: number): number {
  const span = { startS: fromS, endS: approach.endS };
  return fallsToS(flown, span, flown.deviations.heightAboveThresholdFt, STABLE_TO_FT) ?? approach.endS;
}

/** Stable at the gate that counts, and after it. */
export function stabilityCriterion(sitting: Case, gates: readonly GateJudgement[]): CriterionJudgement {
  const gate = gates.find(({ counts }) => counts)!;
  const words = countingGate(sitting).words;
  const plain = { ...notAssessed('stability', `Stable from ${words}`, gate.why), verdict: gate.verdict };
  if (gate.verdict === 'not-met') return { ...plain, verdict: 'not-met', why: `at ${words}: ${gate.why}` };
  if (gate.verdict === 'not-assessed') return plain;
  const proven = gate.lostAfter.filter(({ isProven }) => isProven);
  const at = gate.verdict === 'unclear' ? `unclear at ${words}` : `stable at ${words}`;
  if (proven.length > 0) return { ...plain, verdict: 'not-met', why: `${at}, then ${lostWords(proven)}` };
  const open = unfinished(sitting);
  if (open !== null) return { ...plain, verdict: 'not-assessed', why: `${at}, but ${open}` };
  if (gate.verdict === 'unclear') return plain;
  const [lost] = gate.lostAfter;
  const unclear = (why: string): CriterionJudgement => ({
    ...plain,
    verdict: 'unclear',
    why: `${at}, ${why}`,
  });
  if (lost) return unclear(`then ${lostWords(gate.lostAfter)}, but by no more than its error`);
  const unseenS = unseenAfter(sitting, gate.timeS!);
  if (unseenS > 0) return unclear(`but ${seconds(unseenS)} after it were not recorded`);
  if (gate.doubtedAfter.length > 0)
    return unclear(
      `then ${gate.doubtedAfter.join(' and ')} perhaps outside for 3 s or more, given its error`,
    );
  return { ...plain, verdict: 'met', why: `stable at ${words} and after, as far as this log shows` };
}

/** Unrecorded seconds after a gate, on final, in which a needle may have gone outside; any longer gap without needles. */
function unseenAfter(sitting: Case, gateS: number): number {
  const { deviations, needleError } = sitting.flown;
  const { localizer, glidepath } = sitting.standard.gates;
  const counted = withoutInstructor(sitting, { startS: gateS, endS: finalOf(sitting)!.endS });
  const hidden = (column: Float64Array, halfWidth: HalfWidth, limit: Limit | null) => {
    const parts = recordedIn(sitting, column, counted);
    const halfWidths = halfWidthsIn(sitting, column, halfWidth, counted);
    return hiddenS(parts, counted, limit ?? { lower: null, upper: null }, halfWidths);
  };
  return Math.max(
    hidden(deviations.localizerFullScale, needleError.localizer, localizer),
    hidden(deviations.glidepathFullScale, needleError.glidepath, glidepath),
  );
}

function lostWords(lost: readonly LostItem[]): string {
  const items = [...new Set(lost.map(({ item }) => item))];
  return `${items.join(' and ')} outside for 3 s or more`;
}
