import type { DebriefStated } from '../debrief/debrief.ts';
import { secondsOf } from '../units/utc.ts';

/** What the instructor flew of an approach, as a debrief holds it. */
export type InstructorFlew = DebriefStated['instructorFlew'];

/** Behind what was flown from one moment to another, or at one: that the instructor did; nothing where it was the student. */
export function whoFlew(instructorFlew: InstructorFlew, fromUtc: string, toUtc = fromUtc): string {
  const [fromS, toS] = [secondsOf(fromUtc), secondsOf(toUtc)];
  const spans = instructorFlew.map((span) => [secondsOf(span.startUtc), secondsOf(span.endUtc)] as const);
  if (spans.some(([startS, endS]) => startS <= fromS && toS <= endS)) return ' (the instructor flew)';
  const isPart = spans.some(([startS, endS]) => startS < toS && fromS < endS);
  return isPart ? ' (the instructor flew part of it)' : '';
}
