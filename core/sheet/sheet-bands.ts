import type { ApproachDebrief, DebriefCriterion } from '../debrief/debrief.ts';
import { momentOf } from '../approach/flown-approach.ts';
import type { Span } from '../numeric/polyline.ts';
import { finalOf, type Case } from '../standard/case.ts';
import { sinkLimit } from '../standard/gate-items.ts';
import { speedTarget } from '../standard/speed-target.ts';
import { secondsOf } from '../units/utc.ts';
import type { BandedStrip, SheetBand, SheetExcursion } from './sheet.ts';

const STRIPS: Readonly<Record<string, BandedStrip>> = {
  'localizer-before-final': 'localizer',
  'localizer-final': 'localizer',
  'glidepath-final': 'glidepath',
  'airspeed-final': 'airspeed',
};
const SIDES = {
  localizer: ['right', 'left'],
  glidepath: ['high', 'low'],
  airspeed: ['fast', 'slow'],
} as const;

/** What was tolerated, where it counted. */
export function sheetBands(sitting: Case, { criteria, stability }: ApproachDebrief): SheetBand[] {
  const judged = criteria.flatMap((criterion) => bandsOf(sitting, criterion));
  const gate = stability.find(({ counts }) => counts)?.gate ?? null;
  const gateS = gate === null ? null : momentOf(sitting.approach, gate);
  const final = finalOf(sitting);
  const sink = gateS === null ? null : sinkLimit(sitting, gateS);
  if (gateS === null || !final || gateS >= final.endS || !sink) return judged;
  const lower = sink.upper === null ? null : -sink.upper;
  return [
    ...judged,
    { strip: 'verticalSpeed', startS: gateS, endS: final.endS, lower, upper: null, target: 0 },
  ];
}

function bandsOf(sitting: Case, { id, lower, upper, counted }: DebriefCriterion): SheetBand[] {
  const strip = STRIPS[id];
  if (!strip || (lower === null && upper === null)) return [];
  const target = strip === 'airspeed' ? targetKt(sitting) : 0;
  if (target === null) return [];
  const off = (limit: number | null) => (limit === null ? null : target + limit);
  return counted.map((span) => ({
    strip,
    ...spanOf(span),
    lower: off(lower),
    upper: off(upper),
    target,
  }));
}

function targetKt({ standard, stated }: Case): number | null {
  const target = speedTarget(standard.final.speedBasis, stated);
  return 'why' in target ? null : target.kt;
}

/** Every time outside of a tolerance that a criterion counted. */
export function sheetExcursions({ criteria }: ApproachDebrief): SheetExcursion[] {
  const all = criteria.flatMap(({ id, excursions }) => {
    const axis = STRIPS[id];
    if (!axis || axis === 'verticalSpeed') return [];
    return excursions.map((excursion) => ({
      axis,
      ...spanOf(excursion),
      peakS: secondsOf(excursion.peakUtc),
      peak: excursion.peak,
      side: SIDES[axis][excursion.peak > 0 ? 0 : 1],
      prompt: excursion.prompt,
    }));
  });
  return all.toSorted((a, b) => a.startS - b.startS);
}

function spanOf({ startUtc, endUtc }: { readonly startUtc: string; readonly endUtc: string }): Span {
  return { startS: secondsOf(startUtc), endS: secondsOf(endUtc) };
}
