import type { Briefing } from '../../core/briefing/briefing.ts';
import type { Paper } from '../../core/briefing/papers.ts';
import { pageHtml } from '../hand-over/page-html.tsx';
import styles from './briefing.css?raw';
import { BriefingSheet } from './briefing-sheet.tsx';

/** The sheet as a page of its own, to be printed on that paper. */
export function briefingHtml(briefing: Briefing, paper: Paper): string {
  const body = (
    <main>
      <BriefingSheet briefing={briefing} paper={paper} />
    </main>
  );
  return pageHtml(`Briefing: ${briefing.facility.name}`, styles, body);
}
