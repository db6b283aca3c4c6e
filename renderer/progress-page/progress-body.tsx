import type { Progress, ProgressLine } from '../../core/progress/progress.ts';
import { gateSentences } from '../../core/progress/line-block.ts';
import { comparedSentence, goalWords, progressSentence } from '../../core/progress/sentences.ts';
import { trendSentence } from '../../core/progress/trend-words.ts';
import { plotOf } from '../plots/plot-of.ts';
import { LessonPlotFigure } from '../plots/lesson-plot-figure.tsx';
import { unitWords } from '../plots/words.ts';
import { BehindIt } from './behind-it.tsx';
import { LessonTable } from './lesson-table.tsx';

/** All that the page says of a student: what changed, each criterion drawn, what to practise, and the figures. */
export function ProgressBody({ progress }: { readonly progress: Progress }) {
  const { student, compared, lines, lessons, practise, goals } = progress;
  return (
    <main className="progress-page">
      <article>
        <p className="which">{student}</p>
        <h2>{progressSentence(progress)}</h2>
        <p>{comparedSentence(progress)}</p>
        {practise === null ? null : (
          <p>
            <strong>To practise.</strong> {practise.sentence}
          </p>
        )}
        <div className="line-plots">
          {lines.map((line) => (
            <LineFigure key={line.id} line={line} lessons={lessons} />
          ))}
        </div>
        {goals.length === 0 ? null : (
          <>
            <h3>Goals agreed</h3>
            <ul>
              {goals.map((goal) => (
                <li key={goal.id}>
                  {goal.text}: {goalWords(goal)}
                </li>
              ))}
            </ul>
          </>
        )}
        {compared === null ? null : <LessonTable progress={progress} />}
        <BehindIt progress={progress} />
        <Cautions progress={progress} />
      </article>
    </main>
  );
}

function LineFigure({
  line,
  lessons,
}: {
  readonly line: ProgressLine;
  readonly lessons: Progress['lessons'];
}) {
  const plot = plotOf(line, lessons);
  return (
    <figure className={`line-plot-box ${line.id}`}>
      <figcaption>
        <strong>{line.title}</strong>
        <span>{unitWords(line)}</span>
      </figcaption>
      <LessonPlotFigure plot={plot} title={line.title} />
      <p>{trendSentence(line)}</p>
      {gateSentences(line).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </figure>
  );
}

function Cautions({ progress: { cautions } }: { readonly progress: Progress }) {
  return (
    <footer>
      <h3>Cautions</h3>
      <ul>
        {cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </footer>
  );
}
