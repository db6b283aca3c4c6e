import { useRef, type ReactNode } from 'react';
import { Button } from 'react-aria-components';
import type { Progress } from '../../../core/progress/progress.ts';
import { comparedSentence, progressSentence } from '../../../core/progress/sentences.ts';
import type { AppState } from '../../state/app-state.ts';
import type { Session } from '../../state/session.ts';
import { Heading } from '../library/heading.tsx';
import { ReadBefore, Unread } from '../unread.tsx';
import { useAnswer } from '../use-answer.ts';
import { BehindIt } from '../../progress-page/behind-it.tsx';
import { LessonTable } from '../../progress-page/lesson-table.tsx';
import { LineCard } from './line-card.tsx';
import { OneSheet } from './one-sheet.tsx';
import { ReportButtons } from './report-buttons.tsx';
import { StudentGoals } from './student-goals.tsx';

interface Props {
  readonly id: string;
  readonly state: AppState;
  readonly session: Session;
}

/** A student across lessons: what changed, what to practise, and every criterion lesson by lesson. */
export function StudentView({ id, state, session }: Props) {
  const { changes } = state.library;
  const { answer: progress, problem, again } = useAnswer('studentProgress', { studentId: id }, changes);
  const back = (
    <Button className="button" onPress={() => session.store.dispatch({ do: 'show', view: 'progress' })}>
      All students
    </Button>
  );
  if (problem !== null && (progress === null || problem.isGone))
    return <Unread what="student" problem={problem} again={again} back={back} />;
  if (progress === null) return <p className="working">The lessons are being read …</p>;
  return (
    <div className="student">
      <Head progress={progress} back={back} />
      {problem === null ? null : <ReadBefore problem={problem} again={again} />}
      <div className="student-parts">
        <Lines progress={progress} />
        <aside className="side" aria-label="What comes next">
          <Practise progress={progress} />
          <StudentGoals id={id} progress={progress} session={session} />
        </aside>
      </div>
      {progress.shown === null ? null : (
        <OneSheet shown={progress.shown} dots={state.notes.settings.dots} session={session} />
      )}
      {progress.compared === null ? null : <LessonTable progress={progress} />}
      <BehindIt progress={progress} />
    </div>
  );
}

interface HeadProps {
  readonly progress: Progress;
  readonly back: ReactNode;
}

function Head({ progress, back }: HeadProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  return (
    <>
      <div className="row student-head">
        <p className="which">{progress.student}</p>
        <div className="row">
          {progress.compared === null ? null : <ReportButtons progress={progress} />}
          {back}
        </div>
      </div>
      <Heading place={heading}>{progressSentence(progress)}</Heading>
      <p className="aside">{comparedSentence(progress)}</p>
    </>
  );
}

function Lines({ progress }: { readonly progress: Progress }) {
  const { lines, lessons } = progress;
  if (lines.length === 0) return <p>There will be a chart for each criterion once an approach was judged.</p>;
  return (
    <section className="line-cards" aria-label="Criteria, lesson by lesson">
      {lines.map((line) => (
        <LineCard key={line.id} line={line} lessons={lessons} />
      ))}
    </section>
  );
}

function Practise({ progress: { practise } }: { readonly progress: Progress }) {
  if (practise === null) return null;
  return (
    <section>
      <h2>To practise</h2>
      <p>{practise.sentence}</p>
    </section>
  );
}
