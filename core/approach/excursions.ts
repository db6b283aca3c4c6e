import type { Polyline } from '../numeric/polyline.ts';

/** Limits of a value; null: no limit on that side. Exactly at a limit is inside. */
export interface Limits {
  readonly lower: number | null;
  readonly upper: number | null;
}

/** A stretch of time outside a limit, on one side. */
export interface Excursion {
  readonly startS: number;
  readonly endS: number;
  /** Time beyond the limit: less than end − start when it came back for a moment and stayed near. */
  readonly outsideS: number;
  readonly peak: number;
  readonly peakS: number;
  readonly side: 'above' | 'below';
}

/**
 * The excursions of a value, in order. Crossing times lie on the straight lines between fixes. Two spells on one
 * side, parted only by time deeper than the limit less `near` (0.05 of full scale for a needle), are one; none spans
 * a break.
 */
export function findExcursions(parts: readonly Polyline[], limits: Limits, near: number): Excursion[] {
  const found: Excursion[] = [];
  for (const part of parts) {
    if (limits.upper !== null) found.push(...spells(part, limits.upper, near, 'above'));
    if (limits.lower !== null)
      found.push(...spells(mirrored(part), -limits.lower, near, 'below').map(turned));
  }
  return found.sort((a, b) => a.startS - b.startS);
}

/** Time beyond the limits, seconds. */
export function timeOutsideS(excursions: readonly Excursion[]): number {
  return excursions.reduce((sum, { outsideS }) => sum + outsideS, 0);
}

function spells(
  { timeS, value }: Polyline,
  limit: number,
  near: number,
  side: Excursion['side'],
): Excursion[] {
  const found: Excursion[] = [];
  let joined = false;
  for (let i = 1; i < timeS.length; i++) {
    const a = value[i - 1]!;
    const b = value[i]!;
    if (Math.min(a, b) < limit - near && Math.max(a, b) <= limit) joined = false;
    if (!(Math.max(a, b) > limit)) continue;
    const at = (level: number) => timeS[i - 1]! + ((level - a) / (b - a)) * (timeS[i]! - timeS[i - 1]!);
    const startS = a > limit ? timeS[i - 1]! : at(limit);
    const endS = b > limit ? timeS[i]! : at(limit);
    // A line that rises from far inside has come from there before it crosses.
    if (a < limit - near) joined = false;
    const peak = Math.max(a, b);
    const spell = {
      startS,
      endS,
      outsideS: endS - startS,
      peak,
      peakS: peak === a ? timeS[i - 1]! : timeS[i]!,
      side,
    };
    if (joined) found.push(merged(found.pop()!, spell));
    else found.push(spell);
    joined = b >= limit - near;
  }
  return found;
}

function merged(first: Excursion, second: Excursion): Excursion {
  const deeper = second.peak > first.peak ? second : first;
  return {
    startS: first.startS,
    endS: second.endS,
    outsideS: first.outsideS + second.outsideS,
    peak: deeper.peak,
    peakS: deeper.peakS,
    side: first.side,
  };
}

function mirrored({ timeS, value }: Polyline): Polyline {
  return { timeS, value: value.map((v) => -v) };
}

function turned(excursion: Excursion): Excursion {
  return { ...excursion, peak: -excursion.peak };
}
