import { issue, type Issue } from '../issue/issue.ts';
import { utcText } from '../units/utc.ts';
import type { Flown } from './flown.ts';
import { isInbound, type Pass } from './passes.ts';

/** "at 14:02 UTC", by a pass's first moment. */
function clock({ track }: Flown, { first }: Pass): string {
  return `at ${utcText(track.timeS[first]!)!.slice(11, 16)} UTC`;
}

export function passNote(flown: Flown, pass: Pass, why: string): Issue {
  const line = flown.track.line[pass.first]!;
  return issue('note', 'not-an-approach', `The pass ${clock(flown, pass)} is no approach: ${why}.`, {
    firstLine: line,
  });
}

export function otherRunwayNote(flown: Flown, pass: Pass, offsetFt: number): Issue {
  const side = offsetFt > 0 ? 'right' : 'left';
  const feet = Math.round(Math.abs(offsetFt) / 50) * 50;
  const message = `The pass ${clock(flown, pass)} was flown to another runway, ${feet} ft to the ${side} of this one.`;
  return issue('note', 'other-runway', message, {
    firstLine: flown.track.line[pass.first]!,
    tip: 'Is it the right facility for this flight?',
  });
}

/** What came closest, when no fix was inbound within the localizer's scale. */
export function nothingFound(flown: Flown): Issue {
  const { deviations } = flown;
  let nearestNm = Infinity;
  let inbound = false;
  for (let i = 0; i < flown.track.count; i++) {
    nearestNm = Math.min(nearestNm, Math.hypot(deviations.alongCourseNm[i]!, deviations.acrossCourseNm[i]!));
    inbound ||= isInbound(flown, i);
  }
  const closest = `it came within ${nearestNm.toFixed(1)} NM of the localizer antenna`;
  const message = inbound
    ? `No approach: the flight was never within the localizer's full scale while inbound; ${closest}.`
    : `No approach: nothing was flown towards this runway; ${closest}.`;
  return issue('note', 'no-approach', message, { tip: 'Is it the right facility for this flight?' });
}
