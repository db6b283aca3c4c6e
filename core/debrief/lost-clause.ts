import { at } from '../approach/flown.ts';
import { firstAfter } from '../numeric/polyline.ts';
import { instructorFlewAt, type Case } from '../standard/case.ts';
import { countingGate } from '../standard/counting-gate.ts';
import { gateDatumFt } from '../standard/gate-datum.ts';
import { isVectored } from '../standard/counting.ts';
import type { CriterionJudgement, JudgedExcursion } from '../standard/judgement.ts';
import { scaleWords } from '../standard/words.ts';
import { whole } from '../units/whole.ts';

export const NEEDLES = { 'localizer-final': 'localizer', 'glidepath-final': 'glidepath' } as const;
type NeedleId = keyof typeof NEEDLES;
/** A needle on final, as it was judged. */
export type NeedleJudgement = CriterionJudgement & { readonly id: NeedleId };

/** Heights are said to the nearest of these. */
const STEP_FT = 10;

/** How a needle was lost on final: its worst spell from beginning to end, and how many others there were. */
export function lostClause(sitting: Case, judged: NeedleJudgement): string {
  const { id, counted, outsideRangeS } = judged;
  const spells = spellsOf(judged);
  const worst = spells.reduce((a, b) => (deepest(b) > deepest(a) ? b : a));
  const [first, last] = [worst[0]!, worst.at(-1)!];
  const more = spells.length - 1;
  const again = more === 0 ? '' : more === 1 ? ', and once more' : `, and ${more} times more`;
  const fromStart = first.startS <= counted[0]!.startS || isHandedOver(sitting, first);
  const start = fromStart ? startClause(sitting, id, first) : lossClause(sitting, id, first);
  const doubt = outsideRangeS?.atLeast === 0 ? ' by no more than its error' : '';
  const over = worst.length === 1 ? '' : `, still ${sideWord(id, last)} when the instructor handed it over`;
  return `${start}${doubt}${over}, ${backClause(sitting, judged, last)}${again}`;
}

/** Excursions that only what the instructor flew parts are one spell: taking over corrects nothing of the student's. */
function spellsOf({ excursions, counted }: NeedleJudgement): JudgedExcursion[][] {
  const spells: JudgedExcursion[][] = [];
  for (const excursion of excursions) {
    const before = spells.at(-1)?.at(-1);
    const k = counted.findIndex(({ startS }) => startS === excursion.startS);
    const isOne = k > 0 && before?.side === excursion.side && before.endS === counted[k - 1]!.endS;
    if (isOne) spells.at(-1)!.push(excursion);
    else spells.push([excursion]);
  }
  return spells;
}

function deepest(spell: readonly JudgedExcursion[]): number {
  return Math.max(...spell.map(({ peak }) => Math.abs(peak)));
}

/** The instructor had it until then: how it came there is no answer of the student's. */
function isHandedOver({ stated }: Case, { startS }: JudgedExcursion): boolean {
  return stated.instructorFlew.some(({ endS }) => endS === startS);
}

function startClause(sitting: Case, id: NeedleId, first: JudgedExcursion): string {
  if (isHandedOver(sitting, first)) return `was handed the aircraft ${sideOf(id, first)} ${NEEDLES[id]}`;
  if (first.untilEstablished) return 'joined the localizer inside the fix';
  if (isFirstRecorded(sitting)) return `${sideOf(id, first)} ${NEEDLES[id]} at first`;
  const came = isGated(sitting) ? `passed ${countingGate(sitting).words}` : 'came to final';
  return `${came} ${sideOf(id, first)} ${NEEDLES[id]}`;
}

/** Final begins for this log where it begins itself: how the aircraft came there it does not tell. */
export function isFirstRecorded(sitting: Case): boolean {
  const { insideFix } = sitting.approach;
  return insideFix !== null && insideFix !== 'joined' && !isGated(sitting) && !isVectored(sitting);
}

function lossClause(sitting: Case, id: NeedleId, first: JudgedExcursion): string {
  const side = id === 'localizer-final' ? `to the ${sideWord(id, first)}` : sideWord(id, first);
  return `lost the ${NEEDLES[id]} ${side} at ${heightWords(sitting, first.startS)}`;
}

/** Whether a standard looks at final only below its gate. */
export function isGated({ standard }: Case): boolean {
  return standard.final.countsFrom === 'gate';
}

/**
 * When it was within the limit again, and no more than that: that the needle was centred nobody has said. Where the
 * instructor took over, or the log has a gap, it came back in no time that the student was seen to fly.
 */
function backClause(
  sitting: Case,
  { limit, counted }: NeedleJudgement,
  { endS, prompt, side, untilEstablished }: JudgedExcursion,
): string {
  const height = heightWords(sitting, endS);
  if (instructorFlewAt(sitting, endS)) return `until the instructor took over at ${height}`;
  if (endS >= counted.at(-1)!.endS) return 'and not back before final ended';
  if (isCutByGap(sitting, endS)) return `and not back when the log breaks off at ${height}`;
  if (untilEstablished) return `${prompt ? 'promptly ' : ''}established by ${height}`;
  const within = scaleWords(Math.abs((side === 'above' ? limit?.upper : limit?.lower)!));
  return `${prompt ? 'promptly ' : ''}back within ${within} by ${height}`;
}

function isCutByGap({ flown: { track } }: Case, momentS: number): boolean {
  const after = firstAfter(track.timeS, momentS);
  const isFix = track.timeS[after - 1] === momentS;
  return isFix && after < track.count && track.timeS[after]! - momentS > track.gapLimitS;
}

/** Where the aircraft was, as what stands before the needle's name: "left of the", "high on the". */
export function sideOf(id: NeedleId, excursion: Pick<JudgedExcursion, 'side'>): string {
  return `${sideWord(id, excursion)} ${id === 'localizer-final' ? 'of' : 'on'} the`;
}

function sideWord(id: NeedleId, { side }: Pick<JudgedExcursion, 'side'>): string {
  if (id === 'localizer-final') return side === 'above' ? 'right' : 'left';
  return side === 'above' ? 'high' : 'low';
}

/** Height above the standard's datum, as it is said aloud. */
function heightWords({ flown, standard }: Case, momentS: number): string {
  const datumFt = gateDatumFt(standard, flown.facility);
  const heights = [flown.decidingAltitudeFt, flown.track.altitudeFt].map((column) =>
    at(flown, column, momentS),
  );
  const altitudeFt = heights.find((ft) => !Number.isNaN(ft));
  if (altitudeFt !== undefined) return `${whole(Math.round((altitudeFt - datumFt) / STEP_FT) * STEP_FT)} ft`;
  // An altimeter that was not recorded just there, and no other height: where it was is known all the same.
  return `${at(flown, flown.deviations.distanceToThresholdNm, momentS).toFixed(1)} NM`;
}
