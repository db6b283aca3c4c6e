import type { Debrief } from '../../core/debrief/debrief.ts';
import type { Sheet } from '../../core/sheet/sheet.ts';

/** What one log has on the page to hand over. */
export interface HandOver {
  readonly debrief: Debrief;
  /** One for each approach, in its order. */
  readonly sheets: readonly Sheet[];
}
