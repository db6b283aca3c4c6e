import { findExcursions } from '../approach/excursions.ts';
import { NEAR_FULL_SCALE } from '../approach/needle-measures.ts';
import { OFFSET_LOCALIZER_DEG } from '../facility/impossible-values.ts';
import type { Span } from '../numeric/polyline.ts';
import {
  endedBy,
  finalOf,
  flownToItsEnd,
  instructorFlewAt,
  moment,
  recordedIn,
  withoutInstructor,
  type Case,
} from './case.ts';
import { countingGate } from './counting-gate.ts';
import { fallsToS } from './falling.ts';
import { goAroundBegunS } from './go-around-begun.ts';
import { hiddenS } from './hidden.ts';
import { itemsAtGate, sinkLimit } from './gate-items.ts';
import type { CriterionJudgement, GateItem, GateJudgement, ItemFinding, Verdict } from './judgement.ts';
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
    verdict: 'not-assessed',
    why,
  });
  const tooSlow = sitting.flown.track.medianIntervalS > SLOWEST_S;
  if (tooSlow) return silent('fixes are more than 3 s apart');
  if (timeS === null) return silent('not descended through on final');
  if (timeS >= (goAroundBegunS(sitting) ?? Infinity)) return silent('a missed approach was begun above it');
  if (instructorFlewAt(sitting, timeS)) return silent('the instructor flew');
  const items = itemsAtGate(sitting, timeS);
  const lostAfter = lostItems(sitting, timeS);
  return { ...silent(''), items, lostAfter, ...verdictAt(items) };
}

function verdictAt(items: readonly ItemFinding[]): { verdict: Verdict; why: string } {
  const failed = items.filter(({ holds }) => holds === false);
  if (failed.length > 0)
    return { verdict: 'not-met', why: failed.map(({ item, why }) => `${item} ${why}`).join('; ') };
  const unseen = items.filter(({ item, holds }) => holds === null && item !== 'bank' && item !== 'airspeed');
  if (unseen.length > 0 || items.every(({ holds }) => holds === null))
    return {
      verdict: 'not-assessed',
      why:
        unseen.length > 0
          ? `${unseen.map(({ item }) => item).join(', ')} not recorded`
          : 'nothing of it was recorded',
    };
  return { verdict: 'met', why: 'stable as far as this log shows' };
}

/** What was outside for 3 s or more after a gate. */
function lostItems(sitting: Case, gateS: number): GateJudgement['lostAfter'] {
  const { flown, standard, stated } = sitting;
  const { track, deviations } = flown;
  const { gates } = standard;
  const decisionS = Math.min(moment(sitting, 'decision-altitude') ?? Infinity, lastS(sitting));
  const lowS = Math.min(lowPointS(sitting, gateS), lastS(sitting));
  // A target for final is left for the landing's speed once the runway is in sight; Vref is that speed.
  const speedS = gates.speedBasis === 'vref' ? lowS : decisionS;
  // An offset course leads to no threshold: below decision altitude the aircraft has to leave it.
  const isOffset = Math.abs(flown.facility.courseOffsetDeg) > OFFSET_LOCALIZER_DEG;
  const target = speedTarget(gates.speedBasis, stated);
  const lost = (
    item: GateItem,
    limit: Limit | null,
    column: Float64Array | undefined,
    endS: number,
    add = 0,
    sign = 1,
  ) =>
    limit === null || !column
      ? []
      : spells(sitting, { startS: gateS, endS }, column, limit, { item, add, sign });
  return [
    ...lost('localizer', gates.localizer, deviations.localizerFullScale, isOffset ? decisionS : lowS),
    ...lost('glidepath', gates.glidepath, deviations.glidepathFullScale, decisionS),
    ...('why' in target
      ? []
      : lost(
          'airspeed',
          airspeedLimit(sitting, gates.airspeed),
          track.recorded.airspeedIndicatedKt,
          speedS,
          -target.kt,
        )),
    ...lost('sink', sinkLimit(sitting, gateS), track.verticalSpeedFpm, lowS, 0, -1),
    ...lost('bank', gates.bankDeg, track.recorded.bankDeg, lowS),
  ].toSorted((a, b) => a.startS - b.startS);
}

function spells(
  sitting: Case,
  span: Span,
  column: Float64Array,
  limit: Limit,
  { item, add, sign }: { item: GateItem; add: number; sign: number },
): GateJudgement['lostAfter'][number][] {
  const isLeft = endedBy(sitting) === 'leaving';
  const recorded = recordedIn(sitting, column, withoutInstructor(sitting, span));
  const parts = recorded.map(({ timeS, value }) => ({ timeS, value: value.map((v) => sign * (v + add)) }));
  return findExcursions(parts, limit, NEAR[item])
    .filter(({ outsideS, endS }) => outsideS >= LOST_S && !(isLeft && endS >= span.endS))
    .map(({ startS, endS }) => ({ item, startS, endS }));
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
  const plain = notAssessed('stability', `Stable from ${words}`, gate.why);
  if (gate.verdict === 'not-met') return { ...plain, verdict: 'not-met', why: `at ${words}: ${gate.why}` };
  const [lost] = gate.lostAfter;
  if (gate.verdict === 'not-assessed') return plain;
  if (lost) return { ...plain, verdict: 'not-met', why: `stable at ${words}, then ${lostWords(gate)}` };
  if (!flownToItsEnd(sitting))
    return { ...plain, why: `stable at ${words}, but final was not flown to decision altitude` };
  const unseenS = unseenAfter(sitting, gate.timeS!);
  if (unseenS > 0)
    return { ...plain, why: `stable at ${words}, but ${seconds(unseenS)} after it were not recorded` };
  return { ...plain, verdict: 'met', why: `stable at ${words} and after, as far as this log shows` };
}

/** Unrecorded seconds after a gate, on final, in which a needle may have gone outside; any longer gap without needles. */
function unseenAfter(sitting: Case, gateS: number): number {
  const { deviations } = sitting.flown;
  const { localizer, glidepath } = sitting.standard.gates;
  const counted = withoutInstructor(sitting, { startS: gateS, endS: finalOf(sitting)!.endS });
  const hidden = (column: Float64Array, limit: Limit | null) => {
    const parts = recordedIn(sitting, column, counted);
    return hiddenS(parts, counted, limit ?? { lower: null, upper: null });
  };
  return Math.max(
    hidden(deviations.localizerFullScale, localizer),
    hidden(deviations.glidepathFullScale, glidepath),
  );
}

function lostWords({ lostAfter }: GateJudgement): string {
  const items = [...new Set(lostAfter.map(({ item }) => item))];
  return `${items.join(' and ')} outside for 3 s or more`;
}
