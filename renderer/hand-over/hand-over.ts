import type { Composed } from '../../core/debrief/compose-debrief.ts';
import type { Debrief } from '../../core/debrief/debrief.ts';
import type { SinceLast } from '../../core/progress/since-last.ts';
import { sheetsOf } from '../../core/sheet/sheet-of.ts';
import type { Sheet } from '../../core/sheet/sheet.ts';

/** What one log has on the page to hand over. */
export interface HandOver {
  readonly debrief: Debrief;
  /** One for each approach, in its order. */
  readonly sheets: readonly Sheet[];
  /** What was better than the time before, of approaches where the library knows of it. */
  readonly sinceLast: readonly SinceLast[];
}

export function handOverOf(composed: Composed, sinceLast: readonly SinceLast[]): HandOver {
  return { debrief: composed.debrief, sheets: sheetsOf(composed), sinceLast };
}
