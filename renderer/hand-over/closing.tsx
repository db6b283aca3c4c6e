import type { Debrief } from '../../core/debrief/debrief.ts';
import { isJudged, sentencesToCheck, sourceSentence, taskSentences } from '../../core/report/debrief-text.ts';
import { PLACE_CAUTIONS } from '../../core/report/place-cautions.ts';
import { positionSentence } from '../../core/report/position-line.ts';

/** What all approaches of a log stand on, what is to be checked, and every caution. */
export function Closing({ debrief }: { readonly debrief: Debrief }) {
  const judged = isJudged(debrief);
  const isCorrected = debrief.log.issues.some(({ code }) => code === 'altitude-indicated-corrected');
  return (
    <footer>
      <h3>What it stands on</h3>
      {judged
        ? taskSentences(debrief).map(([covers, cannotSee]) => (
            <p key={covers}>
              {covers} {cannotSee}
            </p>
          ))
        : null}
      <p>
        {sourceSentence(debrief)} {judged ? positionSentence(debrief) : ''}
      </p>
      {sentencesToCheck(debrief).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {isCorrected ? <p>{PLACE_CAUTIONS.temperature}</p> : null}
      <h3>Cautions</h3>
      <ul>
        {debrief.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </footer>
  );
}
