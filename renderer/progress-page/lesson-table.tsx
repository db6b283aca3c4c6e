import { VERDICTS } from '../../core/report/verdict-words.ts';
import { dayOf } from '../../core/progress/sentences.ts';
import type { LessonCell, Progress, ProgressLine } from '../../core/progress/progress.ts';
import { valueWords } from '../plots/plot-of.ts';
import { unitWords } from '../plots/words.ts';
import { WideTable } from '../tables/wide-table.tsx';

/** The figures behind the charts: a row for each lesson, a column for each criterion. */
export function LessonTable({ progress: { lessons, lines } }: { readonly progress: Progress }) {
  return (
    <WideTable name="Lesson by lesson">
      <table className="lesson-table">
        <caption>
          Lesson by lesson{' '}
          <span className="aside">
            {VERDICT_ORDER.map((verdict) => `${VERDICTS[verdict].sign} ${VERDICTS[verdict].word}`).join(', ')}
            : how many approaches
          </span>
        </caption>
        <thead>
          <tr>
            <th scope="col">Lesson</th>
            <th scope="col">Approaches</th>
            {lines.map((line) => (
              <th key={line.id} scope="col">
                {line.title}
                <span className="aside">{unitWords(line)}</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {lessons.map(({ lessonId, date, approaches }, i) => (
            <tr key={lessonId}>
              <th scope="row">
                {i + 1}. {dayOf(date)}
              </th>
              <td>{approaches}</td>
              {lines.map((line) => (
                <td key={line.id}>
                  <Cell line={line} cell={line.lessons[i]!} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </WideTable>
  );
}

function Cell({
  line: { unit },
  cell: { value, verdicts },
}: {
  readonly line: ProgressLine;
  readonly cell: LessonCell;
}) {
  const counts = VERDICT_ORDER.filter((verdict) => verdicts[verdict] > 0);
  return (
    <>
      {value === null ? '–' : valueWords(value, unit)}
      <span className="aside">
        {counts.map((verdict) => (
          <span key={verdict} className={`verdict-count ${verdict}`}>
            <span aria-hidden="true">{VERDICTS[verdict].sign}</span> {verdicts[verdict]}
            <span className="unseen"> {VERDICTS[verdict].word} </span>
          </span>
        ))}
      </span>
    </>
  );
}

const VERDICT_ORDER = ['met', 'not-met', 'unclear', 'not-assessed'] as const;
