import { handOverHtml } from '../../renderer/hand-over/hand-over-html.tsx';
import { handOverOf, type HandOver } from '../../renderer/hand-over/hand-over.ts';
import type { DebriefFormat } from './debrief-formats.ts';

/** As a display of most panels has it. */
const DOTS = 2;

/** The page to hand over. */
export const html: DebriefFormat<HandOver> = {
  ending: 'html',
  partOf: (composed) => handOverOf(composed, []),
  written: (handOver) => handOverHtml([handOver], DOTS),
  allInOne: (handOvers) => handOverHtml(handOvers, DOTS),
};
