import { startFrom } from '../../core/log/start-text.ts';
import { utcText } from '../../core/units/utc.ts';

/** What is wrong with a start as it is typed; null where nothing is. */
export function startProblem(text: string): string | null {
  return startFrom(text) === null ? 'Write day and time, as 2026-05-01 09:00.' : null;
}

export function startWords(startS: number | undefined): string {
  return startS === undefined ? '' : (utcText(startS) ?? '').replace('T', ' ').replace(/(?::00)?Z$/, '');
}
