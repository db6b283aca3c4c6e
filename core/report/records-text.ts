import { bearingWords } from '../facility/wording.ts';
import type { Issue } from '../issue/issue.ts';
import { airacCycle } from '../facility/airac.ts';
import type { RecordBearing } from '../records/bearings.ts';
import type { Drafted } from '../records/drafted.ts';
import type { ListedIls } from '../records/ils-listing.ts';
import type { RecordsIndex } from '../records/records-index.ts';
import { whole } from '../units/whole.ts';
import { indentedLines, pageLines } from './text-rows.ts';

/** What a file of official records holds, and the localizers that were asked for, a line each. Ends with a line end. */
export function recordsText(index: RecordsIndex, listed: readonly ListedIls[]): string {
  const usable = listed.filter(({ hasGlideslope }) => hasGlideslope).length;
  const localizers = listed.length === 1 ? 'one localizer' : `${whole(listed.length)} localizers`;
  const counts = `${whole(index.recordsRead)} read, ${whole(index.recordsUnreadable)} unreadable. Listed: ${localizers}, ${whole(usable)} with a glideslope.`;
  const lines = [...pageLines(`Official records${inForce(index)}: ${counts}`), '', ...listed.map(ilsLine)];
  return `${lines.join('\n')}\n`;
}

function inForce({ cycle, effectiveDay }: RecordsIndex): string {
  if (cycle === null) return ', cycle not known';
  const until = airacCycle(cycle)?.lastDay;
  const days = effectiveDay === null ? '' : `, in force from ${effectiveDay}${until ? ` to ${until}` : ''}`;
  return ` of cycle ${cycle}${days}`;
}

const NAME_CHARS = 30;

function ilsLine(ils: ListedIls): string {
  const cells = [
    ils.airport.padEnd(4),
    ils.airportName.slice(0, NAME_CHARS).padEnd(NAME_CHARS),
    ils.runway.padEnd(3),
    ils.localizer.padEnd(4),
    `${ils.kind} ${/[1-3]/.test(ils.category) ? ils.category : ''}`.padEnd(5),
    ils.frequencyMHz.toFixed(2),
    courseWords(ils.course).padEnd(10),
    ils.hasGlideslope ? '' : 'no glideslope: not usable',
  ];
  return `  ${cells.join('  ')}`.trimEnd();
}

function courseWords(course: RecordBearing | null): string {
  if (course === null) return '';
  return `${bearingWords(course.deg, 1)}° ${course.isTrue ? 'true' : 'mag'}`;
}

const PATH_CHARS = 37;
const VALUE_CHARS = 14;

/** A drafted facility, a line for each value with where it comes from, and what is worth knowing of it. */
export function draftedText(drafted: Drafted, issues: readonly Issue[]): string {
  const values = Object.entries(drafted.origins).flatMap(([path, origin]) => {
    const lead = `  ${path.padEnd(PATH_CHARS)}${String(valueAt(drafted, path)).padEnd(VALUE_CHARS)}  `;
    return indentedLines(lead, origin);
  });
  const worthKnowing = issues.flatMap(({ severity, message, tip }) =>
    indentedLines('  ', `${severity}: ${message}${tip === null ? '' : ` ${tip}`}`),
  );
  const lines = [
    ...pageLines('Compare every value with the current chart. Training debrief only, never for navigation.'),
    '',
    ...values,
    '',
    ...(worthKnowing.length === 0
      ? ['Nothing in it contradicts anything else in it.']
      : ['To be checked', ...worthKnowing]),
    ...pageLines('In no record, and left out: minimums, and the elevation of the touchdown zone.'),
  ];
  return `${lines.join('\n')}\n`;
}

function valueAt({ facility }: Drafted, path: string): unknown {
  return path
    .split('.')
    .reduce<unknown>((branch, key) => (branch as Record<string, unknown> | undefined)?.[key], facility);
}
