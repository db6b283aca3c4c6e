import type { Polyline } from '../numeric/polyline.ts';

/** Limits of a value; null: no limit on that side. Exactly at a limit is inside. */
export interface Limits {
  readonly lower: number | null;
  readonly upper: number | null;
}

type Side = 'above' | 'below';

/** A stretch of time outside a limit, on one side. */
export interface Excursion {
  readonly startS: number;
  readonly endS: number;
  /** Time beyond the limit: less than end − start when it came back for a moment and stayed near. */
  readonly outsideS: number;
  readonly peak: number;
  readonly peakS: number;
  readonly side: Side;
  /** Made by the rules of who has yet to settle on the localizer: all of its time counts, beyond the limit or not. */
  readonly untilEstablished?: true;
}

/**
 * The excursions of a value, in order. Crossing times lie on the straight lines between fixes. Two spells on one
 * side, parted only by time deeper than the limit less `near` (0.05 of full scale for a needle), are one; none spans
 * a break.
 */
export function findExcursions(parts: readonly Polyline[], limits: Limits, near: number): Excursion[] {
  return excursionsOff(parts, [], limits, near, 0);
}

/** Where an error of the whole half-width is thought to move a value: outward, not at all, or inward. */
export type Off = 1 | 0 | -1;

/**
 * The excursions of a value that may be off by a half-width, which stands in lines of the same times: with it off
 * outward to both sides, as it is, or inward. Peaks are moved as well.
 */
export function excursionsOff(
  parts: readonly Polyline[],
  halfWidths: readonly Polyline[],
  limits: Limits,
  near: number,
  off: Off,
): Excursion[] {
  const { upper, lower } = limits;
  const found: Excursion[] = [];
  for (const [k, { timeS, value }] of parts.entries()) {
    const moved = { timeS, value, half: halfWidths[k]?.value ?? null, outward: off };
    if (isAllInside(moved, limits)) continue;
    if (upper !== null) found.push(...spells(moved, upper, near, 'above'));
    if (lower !== null) found.push(...spells(moved, lower, near, 'below'));
  }
  return found.sort((a, b) => a.startS - b.startS);
}

/** A line that may be off by half-widths at the same times, and how many of them outward it is read. */
interface MovedLine extends Polyline {
  readonly half: Float64Array | null;
  readonly outward: Off;
}

/** Time beyond the limits, seconds. */
export function timeOutsideS(excursions: readonly Excursion[]): number {
  return excursions.reduce((sum, { outsideS }) => sum + outsideS, 0);
}

/** Mostly it is, and then neither side has to be gone along. */
function isAllInside({ value, half, outward }: MovedLine, { upper, lower }: Limits): boolean {
  const [most, least] = [upper ?? Infinity, lower ?? -Infinity];
  const isOff = half !== null && outward !== 0;
  for (let i = 0; i < value.length; i++) {
    const byFar = isOff ? outward * half[i]! : 0;
    if (value[i]! + byFar > most || value[i]! - byFar < least) return false;
  }
  return true;
}

/** Not whole yet: a long excursion has a part for every fix. */
type Growing = { -readonly [K in keyof Excursion]: Excursion[K] };

/** Spells on one side. Values are counted away from zero: below a limit is above it in a mirror, and outward is up. */
function spells(line: MovedLine, limit: number, near: number, side: Side): Growing[] {
  const { timeS, value, half, outward } = line;
  const sign = side === 'above' ? 1 : -1;
  const edge = sign * limit;
  const found: Growing[] = [];
  let joined = false;
  // Here and not in a function of its own: it is asked for every fix, many times over.
  const isOff = half !== null && outward !== 0;
  let b = sign * value[0]! + (isOff ? outward * half[0]! : 0);
  for (let i = 1; i < value.length; i++) {
    const a = b;
    b = sign * value[i]! + (isOff ? outward * half[i]! : 0);
    if (a <= edge && b <= edge) {
      if (a < edge - near || b < edge - near) joined = false;
      continue;
    }
    // A line that rises from far inside has come from there before it crosses.
    if (a < edge - near) joined = false;
    const spell = spellBetween(timeS[i - 1]!, a, timeS[i]!, b, edge, side);
    if (joined) lengthen(found.at(-1)!, spell);
    else found.push(spell);
    joined = b >= edge - near;
  }
  return found;
}

/** The part beyond the edge of the line between two fixes, one of which is beyond it. */
function spellBetween(fromS: number, a: number, toS: number, b: number, edge: number, side: Side): Growing {
  const crossingS = fromS + ((edge - a) / (b - a)) * (toS - fromS);
  const startS = a > edge ? fromS : crossingS;
  const endS = b > edge ? toS : crossingS;
  const peak = side === 'above' ? Math.max(a, b) : -Math.max(a, b);
  return { startS, endS, outsideS: endS - startS, peak, peakS: a >= b ? fromS : toS, side };
}

/** Time that a value spends within ± each limit, exactly at it included, on the straight lines between fixes. */
export function timesWithinS(parts: readonly Polyline[], limits: readonly number[]): number[] {
  const withinS = limits.map(() => 0);
  for (const { timeS, value } of parts) {
    let b = value[0]!;
    for (let i = 1; i < value.length; i++) {
      const a = b;
      b = value[i]!;
      const stepS = timeS[i]! - timeS[i - 1]!;
      const low = a < b ? a : b;
      const high = a < b ? b : a;
      for (let k = 0; k < limits.length; k++) {
        const limit = limits[k]!;
        const isWithin = high <= limit && low >= -limit;
        withinS[k]! += isWithin ? stepS : stepS * shareWithin(low, high, limit);
      }
    }
  }
  return withinS;
}

/** Share within ± `limit` of a line between two values, one of which lies beyond it. */
function shareWithin(low: number, high: number, limit: number): number {
  if (low > limit || high < -limit) return 0;
  return (Math.min(high, limit) - Math.max(low, -limit)) / (high - low);
}

/** By what follows it on the same side. */
function lengthen(spell: Growing, next: Excursion): void {
  spell.endS = next.endS;
  spell.outsideS += next.outsideS;
  const isDeeper = next.side === 'above' ? next.peak > spell.peak : next.peak < spell.peak;
  if (!isDeeper) return;
  spell.peak = next.peak;
  spell.peakS = next.peakS;
}
