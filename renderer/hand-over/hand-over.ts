import type { Composed } from '../../core/debrief/compose-debrief.ts';
import type { Debrief } from '../../core/debrief/debrief.ts';
import { sheetsOf } from '../../core/sheet/sheet-of.ts';
import type { Sheet } from '../../core/sheet/sheet.ts';

/** What one log has on the page to hand over. */
export interface HandOver {
  readonly debrief: Debrief;
  /** One for each approach, in its order. */
  readonly sheets: readonly Sheet[];
}

export function handOverOf(composed: Composed): HandOver {
  return { debrief: composed.debrief, sheets: sheetsOf(composed) };
}
