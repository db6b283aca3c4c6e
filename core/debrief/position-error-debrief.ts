import type { Flown } from '../approach/flown.ts';
import { median } from '../numeric/median.ts';
import { firstAfter, firstAtOrAfter, type Span } from '../numeric/polyline.ts';
import type { DebriefPositionError } from './debrief.ts';

/** So many fixes tell how far off they are; all of a long log would cost more than they say. */
const LOOKED_AT = 1000;

/** How far off the fixes may be, over a span; over the whole log where there is none. */
export function positionErrorDebrief({ track, error }: Flown, span: Span | null): DebriefPositionError {
  const first = span === null ? 0 : firstAtOrAfter(track.timeS, span.startS);
  const end = span === null ? track.count : firstAfter(track.timeS, span.endS);
  const step = Math.max(1, Math.ceil((end - first) / LOOKED_AT));
  const over = (half: (i: number) => number) => {
    const values: number[] = [];
    for (let i = first; i < end; i += step) values.push(half(i));
    return { median: median(values), largest: values.reduce((a, b) => Math.max(a, b), 0) };
  };
  return {
    receiver: track.receiver.kind,
    receiverStated: track.receiver.isStated,
    sideFrom: error.sideFrom,
    heightFrom: error.heightFrom,
    sideFt: over(error.sideFt),
    heightFt: over(error.heightFt),
    timeConstantS: error.timeConstantS,
  };
}
