import type { ApproachDebrief } from '../../core/debrief/debrief.ts';
import { safetySentences } from '../../core/report/safety-sentences.ts';

/** Safety limits that were crossed, right below the sentence that sums the approach up. */
export function SafetyNotice({ approach }: { readonly approach: Pick<ApproachDebrief, 'safety'> }) {
  return safetySentences(approach).map((sentence) => (
    <p key={sentence} className="notice">
      {sentence}
    </p>
  ));
}
