import { NOTHING_STATED } from '../../core/standard/stated.ts';
import { MOST_RECENTS } from '../../electron/bridge/kept-limits.ts';
import type { Recent } from '../../electron/bridge/recent.ts';
import { lastDebriefed, type Flight, type Statements } from './app-state.ts';

/** What was said about an open flight. */
export function statementsOf(flight: Flight): Statements {
  const { settings, facilityId, standardId, stated, heights, antennaHeightFt } = flight;
  return { settings, facilityId, standardId, stated, heights, antennaHeightFt };
}

/** Nothing said: the standard is the one that was chosen last. */
export function nothingSaid(standardId: string): Statements {
  const ofHeights = { heights: null, antennaHeightFt: null };
  return { settings: {}, facilityId: null, standardId, stated: NOTHING_STATED, ...ofHeights };
}

/**
 * What changes at a flight of whose log something is remembered: all that was stated is stated again. An entry of an
 * older version lacks what was not remembered then.
 */
export function takenOver(recent: Recent | null, fresh: Statements): Partial<Flight> {
  if (recent === null) return {};
  const { settings, facilityId, standardId, stated, heights, antennaHeightFt } = recent;
  const said = {
    settings: settings ?? fresh.settings,
    facilityId: facilityId ?? fresh.facilityId,
    standardId: standardId ?? fresh.standardId,
    stated: { ...fresh.stated, ...stated },
    heights: heights ?? fresh.heights,
    antennaHeightFt: antennaHeightFt ?? fresh.antennaHeightFt,
  };
  return { ...said, lastTime: differ(said, fresh) ? { isTaken: true, other: fresh } : null };
}

/** The same where all was stated already, as in a record: what is remembered is offered, if it is anything else. */
export function offeredOver(recent: Recent | null, said: Statements): Partial<Flight> {
  if (recent === null) return {};
  const { lastTime: _, ...other } = takenOver(recent, said) as Flight;
  return differ(other, said) ? { lastTime: { isTaken: false, other } } : {};
}

/** What changes once it is known which facilities a log was flown to: the best is taken where none was chosen. */
export function settled(flight: Flight, fits: readonly string[]): Partial<Flight> {
  const best = fits[0] ?? null;
  const facilityId = flight.facilityId ?? best;
  const { lastTime } = flight;
  const isTaken = lastTime?.isTaken === true;
  // Nothing but the facility was taken over, and that would have been found without.
  const isNothing =
    isTaken && !differ({ ...statementsOf(flight), facilityId }, { ...lastTime.other, facilityId: best });
  return { fits, facilityId, lastTime: isNothing ? null : lastTime };
}

/**
 * Whether one set of statements differs from another in what a user would miss. The columns and their units are left
 * out: they are remembered for all logs with the same headers, and stand either way.
 */
function differ(a: Statements, b: Statements): boolean {
  const text = ({ settings, facilityId, standardId, stated, heights, antennaHeightFt }: Statements) => {
    const { columns: _, units: __, ...others } = settings;
    return JSON.stringify([others, facilityId, standardId, stated, heights, antennaHeightFt]);
  };
  return text(a) !== text(b);
}

/** What is remembered of a flight that was read; null while it was not. */
export function entryOf(flight: Flight): Recent | null {
  // What cannot be read with its settings must not be remembered with them: it could not be opened again.
  if (flight.reading.kind !== 'read' || flight.fits === null) return null;
  const debriefed = lastDebriefed(flight.judged);
  return {
    name: flight.name,
    sha256: flight.reading.inspection.sha256,
    ...statementsOf(flight),
    ...(debriefed && { summary: debriefed.debrief.approaches[0]?.summary ?? 'No approach was found.' }),
  };
}

/** Whether a flight of which something is remembered has no debrief, and none is being made. */
export function hasNoDebrief({ judged, facilityId }: Flight): boolean {
  return judged.kind === 'failed' || (judged.kind === 'nothing' && facilityId === null);
}

/** The list without the first sentence of a log's debrief, which is not there any more; the same where there was none. */
export function withoutSummary<R extends readonly Recent[]>(recents: R, sha256: string): R | Recent[] {
  if (!recents.some((recent) => recent.sha256 === sha256 && recent.summary !== undefined)) return recents;
  return recents.map((recent) => {
    const { summary: _, ...rest } = recent;
    return recent.sha256 === sha256 ? rest : recent;
  });
}

/** The entry first, with the time; what an earlier one of the same log knows besides stays. */
export function withOpened(recents: readonly Recent[], entry: Recent, openedUtc: string): Recent[] {
  const before = recents.find(({ sha256 }) => sha256 === entry.sha256);
  const others = recents.filter((recent) => recent !== before);
  return [{ ...before, ...entry, openedUtc }, ...others].slice(0, MOST_RECENTS);
}

/** The entry in its place; the same list where nothing changed, or the log was taken off it. */
export function withChanged<R extends readonly Recent[]>(recents: R, entry: Recent): R | Recent[] {
  const before = recents.find(({ sha256 }) => sha256 === entry.sha256);
  if (!before) return recents;
  const now = { ...before, ...entry, name: before.name };
  if (JSON.stringify(now) === JSON.stringify(before)) return recents;
  return recents.map((recent) => (recent === before ? now : recent));
}
