import type { FacilityEntry } from './app-state.ts';

/** How a facility or a standard is told apart that came with a kept debrief, and is not what it is here today. */
export const KEPT_MARK = 'as kept in the library';

/** Of a debrief in the library: there for the logs that are debriefed at it, and for no others. */
export function isOfLibrary({ mark }: Pick<FacilityEntry, 'mark'>): boolean {
  return mark === KEPT_MARK;
}
