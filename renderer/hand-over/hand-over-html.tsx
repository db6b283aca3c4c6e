import sheetStyles from '../sheet/sheet.css?raw';
import { HandOverBody } from './hand-over-body.tsx';
import type { HandOver } from './hand-over.ts';
import type { Dots } from '../../core/sheet/sheet.ts';
import { pageHtml } from './page-html.tsx';

/** Debriefs as a page to hand over. */
export function handOverHtml(handOvers: readonly HandOver[], dots: Dots): string {
  return pageHtml(titleOf(handOvers), sheetStyles, <HandOverBody handOvers={handOvers} dots={dots} />);
}

function titleOf(handOvers: readonly HandOver[]): string {
  const [first] = handOvers;
  if (handOvers.length !== 1 || !first) return `Debriefs of ${handOvers.length} logs`;
  const { log, facility } = first.debrief;
  return `Debrief of ${log.file} at ${facility.name}`;
}
