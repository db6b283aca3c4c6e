import type { Dots } from '../../core/sheet/sheet.ts';
import { HandOverBody } from '../hand-over/hand-over-body.tsx';
import type { HandOver } from '../hand-over/hand-over.ts';
import { printPage } from './print-page.tsx';

/** Prints a debrief. */
export function printHandOver(handOver: HandOver, dots: Dots): void {
  printPage(<HandOverBody handOvers={[handOver]} dots={dots} />);
}
