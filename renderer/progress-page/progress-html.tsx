import type { Progress } from '../../core/progress/progress.ts';
import { pageHtml } from '../hand-over/page-html.tsx';
import styles from './progress-page.css?raw';
import { ProgressBody } from './progress-body.tsx';

/** A student's record as a page to hand over. */
export function progressHtml(progress: Progress): string {
  return pageHtml(`Progress of ${progress.student}`, styles, <ProgressBody progress={progress} />);
}
