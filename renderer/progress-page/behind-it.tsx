import type { Progress } from '../../core/progress/progress.ts';
import { surenessSentences } from '../../core/progress/sentences.ts';

/** What was left out of the record, and how sure it is. */
export function BehindIt({ progress }: { readonly progress: Progress }) {
  const { leftOut } = progress;
  const sentences = surenessSentences(progress);
  if (leftOut.length === 0 && sentences.length === 0) return null;
  return (
    <section>
      <h3>What it stands on</h3>
      {leftOut.length === 0 ? null : (
        <>
          <p>Left out:</p>
          <ul>
            {leftOut.map(({ sentence }) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </>
      )}
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </section>
  );
}
