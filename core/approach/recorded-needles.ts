import { firstAfter, firstAtOrAfter, type Span } from '../numeric/polyline.ts';
import type { Flown } from './flown.ts';

/** How a needle that the log recorded stood against the computed one, where both were on their scale. */
export interface RecordedNeedle {
  /** Seconds on the scale of both. */
  readonly comparedS: number;
  /** The column runs the way a needle does, right of course to the left, and was turned to be compared. */
  readonly turned: boolean;
  /** Recorded less computed, mean and root of the mean square, fractions of full scale. */
  readonly bias: number;
  readonly rms: number;
  /** Null where one of the two hardly moved. */
  readonly correlation: number | null;
  /** Recorded full scales to a computed one, by least squares; null where the computed needle hardly moved. */
  readonly gain: number | null;
  readonly agrees: boolean;
  /** Both over the span, to be drawn over one another: at most a fix a second, the recorded one turned as above. */
  readonly overlay: readonly NeedlePair[];
}

interface NeedlePair {
  readonly timeS: number;
  readonly computed: number;
  readonly recorded: number;
}

const COLUMNS = {
  localizer: ['localizerFullScale', 'localizerRecordedFullScale'],
  glidepath: ['glidepathFullScale', 'glidepathRecordedFullScale'],
} as const;

/** A recorded needle this near its stop, or a computed one beyond its scale, says nothing of how far. */
const STOP_FULL_SCALE = 0.99;
/** Closer than a second no eye tells two points of a drawn needle apart; a hair less, since a second is no exact step. */
const OVERLAY_EVERY_S = 0.999;
/** Less than this is too little to compare (ours). */
const LEAST_S = 30;
/** A needle that moves less has no direction to compare (ours). */
const MOVES_FULL_SCALE = 0.05;
/**
 * Farther apart than the beam (0.08 and 0.12 of full scale at 95 %, design section 10) and a position's error can
 * bring two needles (ours).
 */
const BIAS_MAX = 0.25;
const RMS_MAX = 0.35;

/**
 * Compares a recorded needle with the computed one over a span; null when the log has none, or less than 30 s of it
 * on the scale of both. Recorded sense is found from the two together: information, never a verdict.
 */
export function compareNeedle(flown: Flown, axis: keyof typeof COLUMNS, span: Span): RecordedNeedle | null {
  const [computedName, recordedName] = COLUMNS[axis];
  const recorded = flown.track.recorded[recordedName];
  if (recorded === undefined) return null;
  const pairs = pairsWithin(flown, flown.deviations[computedName], recorded, span);
  if (pairs.seconds < LEAST_S) return null;
  const { seconds, cc, rr, cr, c, r } = pairs;
  const turned = cr < 0;
  const sign = turned ? -1 : 1;
  const bias = (sign * r - c) / seconds;
  const rms = Math.sqrt(Math.max(0, (cc + rr - 2 * sign * cr) / seconds));
  const computedSpread = Math.sqrt(Math.max(0, cc / seconds - (c / seconds) ** 2));
  const recordedSpread = Math.sqrt(Math.max(0, rr / seconds - (r / seconds) ** 2));
  const together = sign * (cr / seconds - (c / seconds) * (r / seconds));
  const moved = computedSpread >= MOVES_FULL_SCALE;
  return {
    comparedS: seconds,
    turned,
    bias,
    rms,
    correlation:
      moved && recordedSpread >= MOVES_FULL_SCALE ? together / (computedSpread * recordedSpread) : null,
    gain: moved ? together / computedSpread ** 2 : null,
    agrees: Math.abs(bias) <= BIAS_MAX && rms <= RMS_MAX,
    overlay: overlayOf(flown, flown.deviations[computedName], recorded, span, sign),
  };
}

function overlayOf(
  { track: { timeS, count } }: Flown,
  computed: Float64Array,
  recorded: Float64Array,
  { startS, endS }: Span,
  sign: number,
): NeedlePair[] {
  const pairs: NeedlePair[] = [];
  for (let i = firstAtOrAfter(timeS, startS); i < count && timeS[i]! <= endS; i++) {
    if (Number.isNaN(recorded[i]!) || Number.isNaN(computed[i]!)) continue;
    const isSoon = pairs.length > 0 && timeS[i]! - pairs.at(-1)!.timeS < OVERLAY_EVERY_S;
    if (!isSoon) pairs.push({ timeS: timeS[i]!, computed: computed[i]!, recorded: sign * recorded[i]! });
  }
  return pairs;
}

/** Sums over the fixes of a span at which both needles are on their scale, each weighed by the time to the fix before. */
function pairsWithin(
  { track: { timeS, count, gapLimitS } }: Flown,
  computed: Float64Array,
  recorded: Float64Array,
  { startS, endS }: Span,
) {
  const sums = { seconds: 0, c: 0, r: 0, cc: 0, rr: 0, cr: 0 };
  for (let i = Math.max(1, firstAfter(timeS, startS)); i < count && timeS[i]! <= endS; i++) {
    const stepS = timeS[i]! - timeS[i - 1]!;
    const c = computed[i]!;
    const r = recorded[i]!;
    const isOnScale = Math.abs(c) <= 1 && Math.abs(r) < STOP_FULL_SCALE;
    if (!isOnScale || stepS > gapLimitS) continue;
    sums.seconds += stepS;
    sums.c += stepS * c;
    sums.r += stepS * r;
    sums.cc += stepS * c * c;
    sums.rr += stepS * r * r;
    sums.cr += stepS * c * r;
  }
  return sums;
}
