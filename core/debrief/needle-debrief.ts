import type { Excursion } from '../approach/excursions.ts';
import { excursionsOff, timeOutsideS } from '../approach/excursions.ts';
import { FRACTIONS, NEAR_FULL_SCALE, needleExcursions, needleMeasures } from '../approach/needle-measures.ts';
import { spreadOf } from '../approach/spread.ts';
import type { Polyline } from '../numeric/polyline.ts';
import type { JudgedExcursion } from '../standard/judgement.ts';
import type { Limit } from '../standard/standard.ts';
import { utcText } from '../units/utc.ts';
import { unknownOf } from './known.ts';
import type { DebriefExcursion, DebriefNeedle, Inside, ThreeFigures } from './debrief.ts';

/** The names of a needle's two sides: positive first. */
export type Sides = readonly [DebriefExcursion['side'], DebriefExcursion['side']];
/** How far a beam itself may be off, 95 %, fractions of full scale; assumed typical (design, section 10). */
export const LOCALIZER_BEAM = 0.08;
export const GLIDEPATH_BEAM = 0.12;
export const LOCALIZER_SIDES: Sides = ['right', 'left'];
export const GLIDEPATH_SIDES: Sides = ['high', 'low'];

const NOTHING_RECORDED = 'Nothing of this needle was recorded here.';
/** A log slower than this shows no turns of a needle (design, section 9). */
const SLOWEST_FOR_TURNS_S = 3;
const TOO_SLOW = 'Fixes are more than 3 s apart: too few to see a needle turn.';
const NOT_COUNTED = 'No criterion counted here.';
const NO_LIMIT = 'The standard sets no limit for this needle here.';

/** What a standard makes of one needle on a segment. */
export interface NeedleRule {
  /** Null where the standard sets none. */
  readonly limit: Limit | null;
  readonly sides: Sides;
  readonly beam: number;
  /** Those that a criterion counted. */
  readonly judged: readonly JudgedExcursion[];
}

/** One needle over one segment: what was recorded of it, how far that may be off, and what it may hide. */
interface NeedleRecord {
  readonly parts: readonly Polyline[];
  readonly halfWidths: readonly Polyline[];
  /** Unrecorded seconds in which it may have been beyond a limit. */
  readonly hiddenS: (limit: Limit) => number;
}

/** How one needle stood over a segment. */
export function needleDebrief(
  { parts, halfWidths, hiddenS }: NeedleRecord,
  { limit, sides, beam, judged }: NeedleRule,
  medianIntervalS: number,
): DebriefNeedle {
  const measures = needleMeasures(parts);
  if (!measures) return silentNeedle();
  const { spread, insideS, reversalsPerMinute } = measures;
  const isSlow = medianIntervalS > SLOWEST_FOR_TURNS_S;
  const excursions = limit === null ? [] : needleExcursions(parts, limit);
  const halfWidth = spreadOf(halfWidths);
  const withBeam = halfWidths.map((line) => widenedBy(line, beam));
  const outside = (widths: readonly Polyline[]) =>
    limit && outsideOf({ parts, halfWidths: widths, hiddenS }, limit, timeOutsideS(excursions));
  const shown = outside(withBeam);
  // What the wider band never has beyond, the narrower has not either.
  const isNever = shown !== null && limit !== null && shown.atMost === hiddenS(limit);
  return {
    meanFullScale: spread.mean,
    rmsFullScale: spread.rms,
    standardDeviationFullScale: spread.standardDeviation,
    maxAbsFullScale: Math.abs(spread.peak),
    maxAbsUtc: utcText(spread.peakS),
    halfWidthFullScale: halfWidth && { mean: halfWidth.mean, largest: halfWidth.highest },
    insideS: inside(insideS),
    insideShare: inside(insideS.map((s) => s / spread.durationS)),
    reversalsPerMinute: isSlow ? null : reversalsPerMinute,
    timeOutsideS: isNever ? shown : outside(halfWidths),
    shownOutsideS: shown,
    excursions: excursions.map((excursion) => {
      const prompt = judged.find((other) => overlap(excursion, other))?.prompt ?? null;
      return {
        ...excursionDebrief(excursion, sides),
        prompt,
        unknown: unknownOf({ prompt }, { prompt: NOT_COUNTED }),
      };
    }),
    unknown: {
      ...(limit === null && { timeOutsideS: NO_LIMIT, shownOutsideS: NO_LIMIT }),
      ...(isSlow && { reversalsPerMinute: TOO_SLOW }),
    },
  };
}

/** A loop, since a callback costs more than what is done here, and this is done for every fix of an approach. */
function widenedBy({ timeS, value }: Polyline, beam: number): Polyline {
  const widened = new Float64Array(value.length);
  for (let i = 0; i < value.length; i++) widened[i] = Math.sqrt(value[i]! * value[i]! + beam * beam);
  return { timeS, value: widened };
}

function outsideOf({ parts, halfWidths, hiddenS }: NeedleRecord, limit: Limit, best: number): ThreeFigures {
  const withOff = (off: 1 | -1) =>
    timeOutsideS(excursionsOff(parts, halfWidths, limit, NEAR_FULL_SCALE, off));
  const most = withOff(1);
  // What is never beyond with all of its error outward is never beyond with less.
  if (most === 0) return { atLeast: 0, best, atMost: hiddenS(limit) };
  return {
    atLeast: Math.min(best, withOff(-1)),
    best,
    atMost: Math.max(best, most) + hiddenS(limit),
  };
}

function silentNeedle(): DebriefNeedle {
  const nothing = {
    meanFullScale: null,
    rmsFullScale: null,
    standardDeviationFullScale: null,
    maxAbsFullScale: null,
    maxAbsUtc: null,
    halfWidthFullScale: null,
    insideS: null,
    insideShare: null,
    reversalsPerMinute: null,
    timeOutsideS: null,
    shownOutsideS: null,
  };
  const unknown = Object.fromEntries(Object.keys(nothing).map((key) => [key, NOTHING_RECORDED]));
  return { ...nothing, excursions: [], unknown };
}

function inside(values: readonly number[]): Inside {
  const [quarter, half, threeQuarters, full] = FRACTIONS.map((_, i) => values[i]!);
  return { quarter: quarter!, half: half!, threeQuarters: threeQuarters!, full: full! };
}

function overlap(a: Excursion, b: Excursion): boolean {
  return a.side === b.side && a.startS < b.endS && b.startS < a.endS;
}

function excursionDebrief(
  excursion: Excursion,
  [above, below]: Sides,
): Omit<DebriefExcursion, 'prompt' | 'unknown'> {
  return {
    startUtc: utcText(excursion.startS)!,
    endUtc: utcText(excursion.endS)!,
    peakUtc: utcText(excursion.peakS)!,
    peakFullScale: excursion.peak,
    side: excursion.side === 'above' ? above : below,
  };
}
