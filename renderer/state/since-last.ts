import type { SinceLast } from '../../core/progress/since-last.ts';
import { lastDebriefed, type Flight } from './app-state.ts';
import { call } from './host.ts';
import { statementsOf } from './recent-entry.ts';

/** Everything that a debrief depends on, to be compared. */
export function statementText(flight: Flight): string {
  return JSON.stringify(statementsOf(flight));
}

/** Whether a flight's debrief is the one that the library keeps, as far as this page knows. */
function isAsKept(flight: Flight): boolean {
  return flight.kept?.statements === statementText(flight);
}

/** What the library knows to be better than the time before, of a debrief that it keeps; nothing of any other. */
export async function askSinceLast(flight: Flight): Promise<readonly SinceLast[]> {
  const debriefed = lastDebriefed(flight.judged);
  if (!debriefed || !flight.kept?.student || !isAsKept(flight)) return [];
  const { log, facility, standard } = debriefed.debrief;
  return call('sinceLast', { sha256: log.sha256, facility: facility.name, standardId: standard.id });
}

/** The same as long as nothing else was stated since. */
export function sinceLastOf(flight: Flight): readonly SinceLast[] {
  return isAsKept(flight) ? flight.sinceLast : [];
}
