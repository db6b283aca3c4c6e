import { momentOf } from '../approach/flown-approach.ts';
import type { ApproachDebrief, DebriefCriterion } from '../debrief/debrief.ts';
import type { Span } from '../numeric/polyline.ts';
import type { Case } from '../standard/case.ts';
import { sinkFollowed } from '../standard/gates.ts';
import { speedTarget } from '../standard/speed-target.ts';
import type { OwnQuantity } from '../standard/standard.ts';
import { secondsOf } from '../units/utc.ts';
import type { BandedStrip, SheetBand, SheetExcursion } from './sheet.ts';

const STRIPS: Readonly<Record<string, BandedStrip>> = {
  'localizer-before-final': 'localizer',
  'localizer-final': 'localizer',
  'glidepath-final': 'glidepath',
  'airspeed-final': 'airspeed',
};
const OWN_STRIPS: Readonly<Record<OwnQuantity, BandedStrip | null>> = {
  verticalSpeedFpm: 'verticalSpeed',
  bankDeg: 'bankDeg',
  pitchDeg: 'pitchDeg',
  groundspeedKt: null,
};

function stripOf({ standard }: Case, id: string): BandedStrip | null {
  const own = standard.own.find((criterion) => criterion.id === id);
  return STRIPS[id] ?? (own ? OWN_STRIPS[own.quantity] : null);
}

/** What was tolerated, where it counted. */
export function sheetBands(sitting: Case, approach: ApproachDebrief): SheetBand[] {
  return [
    ...approach.criteria.flatMap((criterion) => bandsOf(sitting, criterion)),
    ...sinkBands(sitting, approach),
  ];
}

function bandsOf(sitting: Case, criterion: DebriefCriterion): SheetBand[] {
  const { id, lower, upper, counted, excursions } = criterion;
  const strip = stripOf(sitting, id);
  if (strip === null || (lower === null && upper === null)) return [];
  const target = strip === 'airspeed' ? targetKt(sitting) : 0;
  if (target === null) return [];
  const off = (limit: number | null) => (limit === null ? null : target + limit);
  return counted.map((span) => ({
    strip,
    ...spanOf(span),
    lower: off(lower),
    upper: off(upper),
    excursions: excursions.map(spanOf),
  }));
}

/** Sink as the gate that counts followed it; nothing where that gate could not be judged. */
function sinkBands(sitting: Case, { stability }: ApproachDebrief): SheetBand[] {
  const counting = stability.find(({ counts }) => counts);
  const isJudged = counting?.items.some(({ item, verdict }) => item === 'sink' && verdict !== 'not-assessed');
  const gateS = counting ? momentOf(sitting.approach, counting.gate) : null;
  if (!isJudged || gateS === null) return [];
  const { limit, spans } = sinkFollowed(sitting, gateS);
  const lower = limit?.upper === null || limit === null ? null : -limit.upper;
  if (lower === null) return [];
  return spans.map((span) => ({ strip: 'verticalSpeed', ...span, lower, upper: null, excursions: null }));
}

function targetKt({ standard, stated }: Case): number | null {
  const target = speedTarget(standard.final.speedBasis, stated);
  return 'why' in target ? null : target.kt;
}

/** Every time outside of a tolerance that a criterion counted, in the order flown. */
export function sheetExcursions(sitting: Case, { criteria }: ApproachDebrief): SheetExcursion[] {
  const all = criteria.flatMap(({ id, title, unit, excursions }) =>
    excursions.map((excursion) => ({
      criterionId: id,
      title,
      unit,
      strip: stripOf(sitting, id),
      ...spanOf(excursion),
      peakS: secondsOf(excursion.peakUtc),
      peak: excursion.peak,
      outsideS: excursion.outsideS,
      prompt: excursion.prompt,
      untilEstablished: excursion.untilEstablished ?? false,
    })),
  );
  return all.toSorted((a, b) => a.startS - b.startS);
}

function spanOf({ startUtc, endUtc }: { readonly startUtc: string; readonly endUtc: string }): Span {
  return { startS: secondsOf(startUtc), endS: secondsOf(endUtc) };
}
