import type {
  ApproachJudgement,
  CriterionJudgement,
  GateJudgement,
  ItemFinding,
  JudgedExcursion,
  LostItem,
  Verdict,
} from '../../../core/standard/judgement.ts';

const TITLES = {
  'localizer-before-final': 'Localizer before final',
  'altitude-before-final': 'Altitude before final',
  'localizer-final': 'Localizer on final',
  'glidepath-final': 'Glidepath on final',
  'airspeed-final': 'Airspeed on final',
  stability: 'Stability',
  minimums: 'Minimums',
};
const NOT_IN_TIME: ReadonlySet<string> = new Set(['stability', 'minimums']);

/** The range of a time that nothing leaves open. */
function exactly(outsideS: number) {
  return { atLeast: outsideS, atMost: outsideS };
}

/** A criterion that is met and well inside for 200 s, but for what is said otherwise. */
export function criterion(id: string, but: Partial<CriterionJudgement> = {}): CriterionJudgement {
  const inTime = !NOT_IN_TIME.has(id);
  return {
    id,
    title: new Map(Object.entries(TITLES)).get(id) ?? id,
    limit: null,
    unit: null,
    measured: 0,
    halfWidth: null,
    counted: [{ startS: 0, endS: 200 }],
    assessedS: 200,
    outsideS: inTime ? 0 : null,
    assessedNm: inTime ? 5 : null,
    outsideNm: inTime ? 0 : null,
    outsideRangeS: inTime ? exactly(but.outsideS ?? 0) : null,
    excursions: [],
    insideHalfShare: inTime ? 1 : null,
    verdict: 'met',
    why: 'within its limit',
    allowed: null,
    ...but,
  };
}

export const ALL_IDS: readonly string[] = Object.keys(TITLES);

/** All seven criteria met and well inside, but for what is said otherwise of some. */
export function criteria(but: Readonly<Record<string, Partial<CriterionJudgement>>> = {}) {
  return ALL_IDS.map((id) => criterion(id, but[id]));
}

export function judgement(but: Partial<ApproachJudgement> = {}): ApproachJudgement {
  return {
    criteria: criteria(),
    gates: [gate()],
    safety: [],
    soundGoAround: null,
    ceiling: null,
    noLevelBecause: null,
    ...but,
  };
}

export const NOT_ASSESSED: Partial<CriterionJudgement> = {
  verdict: 'not-assessed',
  measured: null,
  outsideS: null,
  assessedNm: null,
  outsideNm: null,
  insideHalfShare: null,
  why: 'nothing was said of it',
};

export function excursion(outsideS: number, prompt: boolean): JudgedExcursion {
  return { startS: 10, endS: 10 + outsideS, outsideS, peak: 0.8, peakS: 11, side: 'above', prompt };
}

export function item(name: ItemFinding['item'], verdict: Verdict): ItemFinding {
  return { item: name, measured: 0, limit: null, verdict, why: 'as measured' };
}

/** An item lost after a gate, whatever the log may be off. */
export function lost(name: LostItem['item'], startS = 110, endS = 114): LostItem {
  return { item: name, startS, endS, isProven: true };
}

/** A gate whose verdict follows from its items, but for what is said otherwise. */
export function gate(but: Partial<GateJudgement> = {}): GateJudgement {
  const items = but.items ?? [item('localizer', 'met'), item('glidepath', 'met')];
  const holds = (verdict: Verdict) => items.some((one) => one.verdict === verdict);
  return {
    gate: 'gate-500',
    heightFt: 500,
    timeS: 100,
    counts: true,
    items,
    lostAfter: [],
    doubtedAfter: [],
    verdict: holds('not-met') ? 'not-met' : holds('unclear') ? 'unclear' : 'met',
    why: 'all items hold',
    ...but,
  };
}
