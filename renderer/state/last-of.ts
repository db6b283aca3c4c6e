import type { Debriefed, Judged } from './app-state.ts';

/** The newest debrief that there is, also while another is being made; null before the first. */
export function lastOf(judged: Judged): Debriefed | null {
  if (judged.kind === 'done') return judged.debriefed;
  return judged.kind === 'working' ? judged.last : null;
}
