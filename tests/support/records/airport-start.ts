import type { Field } from './written-record.ts';

/** Customer area and region of what is invented: no real one is called so. */
export const AREA = 'XXX';
export const REGION = 'X1';

/** The first columns of an airport's record. */
export function airportStart(ident: string, subsection: string, name: string): Field[] {
  return [
    [1, `S${AREA}P ${ident}${REGION}${subsection}`],
    [14, name],
  ];
}

/** A waypoint five miles before the fix is called like it, with an X at its end. */
export function joiningName(fixName: string): string {
  return `${fixName.slice(0, -1)}X`;
}
