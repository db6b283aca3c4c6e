import { decimalYear } from '../earth/magnetic.ts';
import type { Log } from '../log/log.ts';
import type { Track } from './track.ts';

/** The year of a flight for the magnetic model, with its share gone by; null when the log does not know its date. */
export function flightYear({ timeReference }: Pick<Log, 'timeReference'>, { timeS }: Track): number | null {
  return timeReference === 'elapsed' ? null : decimalYear(timeS[0]!);
}
