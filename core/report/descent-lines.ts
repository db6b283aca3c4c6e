import type { DebriefDescent } from '../debrief/debrief.ts';
import { whole } from '../units/whole.ts';
import { dayAndClock, duration } from './plain-words.ts';
import { whoFlew, type InstructorFlew } from './who-flew.ts';

/** Lines are few: the stretches that moved farthest, and none that a needle hardly shows (both ours). */
const MOST_STRETCHES = 3;
const TOLD_FROM_FT = 40;
/** So near is on the glidepath, to a person. */
const ON_PATH_FT = 5;

/**
 * Where height above the glidepath was lost and gained, in the order flown, and how steep it was; at most four lines.
 *
 * @param onFinal who flew final, as `whoFlew` says it
 */
export function descentLines(
  descent: DebriefDescent,
  instructorFlew: InstructorFlew,
  onFinal: string,
): string[] {
  const told = descent.stretches
    .filter(({ gainedFt }) => Math.abs(gainedFt) >= TOLD_FROM_FT)
    .toSorted((a, b) => Math.abs(b.gainedFt) - Math.abs(a.gainedFt))
    .slice(0, MOST_STRETCHES)
    .toSorted((a, b) => a.startUtc.localeCompare(b.startUtc));
  return [...told.map((one) => stretchLine(one, instructorFlew)), ...steepLine(descent, onFinal)];
}

function stretchLine(
  { startUtc, endUtc, fromFt, toFt, meanExcessFpm }: DebriefDescent['stretches'][number],
  instructorFlew: InstructorFlew,
): string {
  const rate = `sinking ${whole(Math.abs(meanExcessFpm))} ft/min ${meanExcessFpm < 0 ? 'less' : 'more'} than needed`;
  return `${clock(startUtc)} to ${clock(endUtc)}: ${moved(fromFt, toFt)}, ${rate}${whoFlew(instructorFlew, startUtc, endUtc)}.`;
}

/** A way relative to the glidepath: back to it, away from it, across it, or farther on. */
function moved(fromFt: number, toFt: number): string {
  if (Math.abs(toFt) < ON_PATH_FT) return `${standing(fromFt)} made up`;
  return `from ${Math.abs(fromFt) < ON_PATH_FT ? 'the path' : standing(fromFt)} to ${standing(toFt)}`;
}

function standing(ft: number): string {
  return `${whole(Math.abs(ft))} ft ${ft < 0 ? 'low' : 'high'}`;
}

function steepLine({ steepS }: DebriefDescent, onFinal: string): string[] {
  if (Math.round(steepS) < 1) return [];
  return [`Sank more than 300 ft/min faster than needed for ${duration(steepS)} in all${onFinal}.`];
}

function clock(utc: string): string {
  return dayAndClock(utc).clock;
}
