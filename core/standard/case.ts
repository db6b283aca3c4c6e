import { momentOf, unseenPassage, type EventKind, type FlownApproach } from '../approach/flown-approach.ts';
import type { Flown } from '../approach/flown.ts';
import { LazyColumn, type Column } from '../numeric/lazy-column.ts';
import { clip, firstAfter, type Polyline, type Span } from '../numeric/polyline.ts';
import type { Standard } from './standard.ts';
import type { Stated } from './stated.ts';

/** One approach, the standard it is held to, and what the people on board say of it. */
export interface Case {
  readonly flown: Flown;
  readonly approach: FlownApproach;
  readonly standard: Standard;
  readonly stated: Stated;
}

/** The moment of an event of the approach; null when there was none. */
export function moment({ approach }: Case, kind: EventKind): number | null {
  return momentOf(approach, kind);
}

export function finalOf({ approach }: Case): Span | null {
  return approach.segments.find(({ kind }) => kind === 'final') ?? null;
}

/**
 * Why final was not seen to its end; null where it was. A go-around ends final as decision altitude does; a log that
 * ends, or an aircraft that leaves, does not.
 */
export function unfinished(sitting: Case): string | null {
  if (endsUnseen(sitting)) return `decision altitude was ${PASSED_UNSEEN}`;
  if (sitting.approach.flownToDecision || moment(sitting, 'missed-approach-start') !== null) return null;
  return 'final was not flown to decision altitude';
}

/** Of a height: what a gap bracketed was passed, though nobody saw when and how. */
export const PASSED_UNSEEN = 'passed while nothing was recorded';

/** Whether decision altitude was passed within a gap, before any missed approach was begun. */
export function endsUnseen(sitting: Case): boolean {
  const passed = unseenPassage(sitting.approach, 'decision-altitude');
  return passed !== null && passed.startS < (moment(sitting, 'missed-approach-start') ?? Infinity);
}

/** The parts of a span in which the student flew. */
export function withoutInstructor({ stated }: Case, span: Span): Span[] {
  let parts = [span];
  for (const hole of stated.instructorFlew)
    parts = parts.flatMap(({ startS, endS }) => {
      const before = { startS, endS: Math.min(endS, hole.startS) };
      const after = { startS: Math.max(startS, hole.endS), endS };
      if (hole.endS <= startS || hole.startS >= endS) return [{ startS, endS }];
      return [before, after].filter((part) => part.endS > part.startS);
    });
  return parts;
}

/** What was recorded of a column within spans. */
export function recordedIn(
  { flown }: Pick<Case, 'flown'>,
  column: Column,
  spans: readonly Span[],
): readonly Polyline[] {
  // Nearly always it is one.
  if (spans.length === 1) return flown.lines.over(column, spans[0]!);
  return spans.flatMap((span) => flown.lines.over(column, span));
}

/** How far off a column may be at each fix: kept once it was worked out, or worked out whenever it is asked. */
export type HalfWidth = LazyColumn | ((i: number) => number);

/** How far off a recorded column may be within spans: lines of the same times as `recordedIn` has. */
export function halfWidthsIn(
  { flown: { track, lines } }: Pick<Case, 'flown'>,
  column: Float64Array,
  halfWidth: HalfWidth,
  spans: readonly Span[],
): readonly Polyline[] {
  return spans.flatMap((span) => {
    const isKept = halfWidth instanceof LazyColumn;
    if (isKept && lines.isWhole(column, span)) return lines.over(halfWidth, span);
    const first = Math.max(0, firstAfter(track.timeS, span.startS) - 1);
    const end = firstAfter(track.timeS, span.endS) + 1;
    const timeS = track.timeS.subarray(first, end);
    const halves = new Float64Array(timeS.length);
    const widthAt = isKept ? (i: number) => halfWidth.at(i) : halfWidth;
    for (let k = 0; k < halves.length; k++)
      halves[k] = Number.isNaN(column[first + k]!) ? NaN : widthAt(first + k);
    return clip(timeS, halves, span, track.gapLimitS);
  });
}

export function instructorFlewAt({ stated }: Case, momentS: number): boolean {
  return stated.instructorFlew.some(({ startS, endS }) => momentS >= startS && momentS <= endS);
}

/** What ended final other than decision altitude, where that changes how its last moments are seen. */
export function endedBy(sitting: Case): 'leaving' | 'going-around' | null {
  const { outcome, flownToDecision } = sitting.approach;
  if (flownToDecision || endsUnseen(sitting)) return null;
  if (outcome === 'circled' || outcome === 'sidestepped') return 'leaving';
  return moment(sitting, 'missed-approach-start') === null ? null : 'going-around';
}
