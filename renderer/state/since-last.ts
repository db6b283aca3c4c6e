import type { SinceLast } from '../../core/progress/since-last.ts';
import { lastDebriefed, type AppState, type Flight } from './app-state.ts';
import { contentOf, inOneOrder } from './content-of.ts';
import { call } from './host.ts';
import { askedStandard, standardNamed } from './own-standards.ts';
import { statementsOf } from './recent-entry.ts';

type Known = Pick<AppState, 'facilities' | 'standards' | 'keptStandards'>;

/**
 * Everything that a debrief depends on, to be compared: facility and standard by what they say, since one's own are
 * changed under the same id.
 */
export function statementText(state: Known, flight: Flight): string {
  const { facilityId, standardId, ...said } = statementsOf(flight);
  const facility = state.facilities.find(({ id }) => id === facilityId);
  const standard = standardNamed(state, standardId) ?? askedStandard(state, standardId);
  return JSON.stringify([said, facility ? contentOf(facility.text) : null, inOneOrder(standard)]);
}

/** Whether a flight's debrief is the one that the library keeps, as far as this page knows. */
function isAsKept(state: Known, flight: Flight): boolean {
  return flight.kept !== null && flight.kept.statements === statementText(state, flight);
}

/** What the library knows to be better than the time before, of a debrief that it keeps; nothing of any other. */
export async function askSinceLast(state: Known, flight: Flight): Promise<readonly SinceLast[]> {
  const debriefed = lastDebriefed(flight.judged);
  if (!debriefed || !flight.kept?.student || !isAsKept(state, flight)) return [];
  const { log, facility, standard } = debriefed.debrief;
  return call('sinceLast', { sha256: log.sha256, facility: facility.name, standardId: standard.id });
}

/** The same as long as nothing else was stated since. */
export function sinceLastOf(state: Known, flight: Flight): readonly SinceLast[] {
  return isAsKept(state, flight) ? flight.sinceLast : [];
}
