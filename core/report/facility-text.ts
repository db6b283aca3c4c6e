import type { FacilityGeometry } from '../facility/derive-geometry.ts';
import type { Facility } from '../facility/facility-schema.ts';
import type { Issue } from '../issue/issue.ts';
import { facilityFacts } from './facility-facts.ts';
import { facilityTables } from './facility-tables.ts';
import { textLines } from './text-rows.ts';

const PAGE_WIDTH = 100;
const CAUTION = 'Training debrief only, never for navigation. Use the current chart.';

/**
 * A facility as a page to read, at most 100 columns: what the file gives and what follows from it, what the
 * needles mean in feet, the path's altitudes, sink rates, and what is to be checked. Ends with a line end.
 */
export function facilityText(
  facility: Facility,
  geometry: FacilityGeometry,
  issues: readonly Issue[],
): string {
  const blocks = [
    heading(facility),
    [CAUTION],
    ...facilityFacts(facility, geometry),
    ...facilityTables(geometry),
    toCheck(issues),
  ];
  const filled = blocks.filter((lines) => lines.length > 0);
  return `${filled.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

function heading({ name, ident, frequencyMHz }: Facility): string[] {
  const radio = [ident ?? '', frequencyMHz === undefined ? '' : `${frequencyMHz.toFixed(2)} MHz`];
  const lines = textLines([name.trim(), ...radio.filter((part) => part !== '')].join(', '), PAGE_WIDTH);
  return [...lines, '='.repeat(lines[0]!.length)];
}

function toCheck(issues: readonly Issue[]): string[] {
  if (issues.length === 0) return ['Nothing in this facility contradicts anything else in it.'];
  const entries = issues.flatMap(({ severity, message, tip }) => {
    const [first = '', ...rest] = textLines(`${severity}: ${message}`, PAGE_WIDTH - 2);
    const tipLines = tip === null ? [] : textLines(tip, PAGE_WIDTH - 4);
    return [`  ${first}`, ...[...rest, ...tipLines].map((line) => `    ${line}`)];
  });
  return ['To be checked', ...entries];
}
