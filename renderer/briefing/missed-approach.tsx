import type { Briefing } from '../../core/briefing/briefing.ts';
import { missedApproachHead } from '../../core/briefing/words.ts';

/** Step by step, as it is read aloud. */
export function MissedApproach({ briefing }: { readonly briefing: Briefing }) {
  const { steps } = briefing.missedApproach;
  return (
    <section>
      <h2>{missedApproachHead(briefing)}</h2>
      {steps.length === 0 ? null : (
        <ol>
          {steps.map((step, i) => (
            <li key={`${i} ${step}`}>{step}</li>
          ))}
        </ol>
      )}
    </section>
  );
}
