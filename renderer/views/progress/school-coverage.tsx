import { coverageSentences } from '../../../core/progress/school/coverage-words.ts';
import type { School } from '../../../core/progress/school/school.ts';

/** Of what there is no figure, and what was left out. */
export function SchoolCoverage({ school }: { readonly school: School }) {
  const lines = [...coverageSentences(school), ...school.leftOut.map(({ sentence }) => sentence)];
  if (lines.length === 0) return null;
  return (
    <section>
      <h2>Not in these figures</h2>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
}
