import { useEffect, useRef } from 'react';
import { Button } from 'react-aria-components';
import { needsSentence } from '../../../core/progress/school/needs-by-criterion.ts';
import type { SchoolAsked } from '../../../core/progress/school/school-page.ts';
import { schoolCsv } from '../../../core/progress/school/school-csv.ts';
import type { School } from '../../../core/progress/school/school.ts';
import { AT_START, type AppState } from '../../state/app-state.ts';
import type { Session } from '../../state/session.ts';
import { download } from '../../state/download.ts';
import { Tick } from '../fields.tsx';
import { Heading } from '../library/heading.tsx';
import { UnopenedLibrary } from '../library/unopened-library.tsx';
import { ReadBefore, Unread } from '../unread.tsx';
import { useAnswer } from '../use-answer.ts';
import { OpenStudent } from '../open-student.tsx';
import { SchoolControls } from './school-controls.tsx';
import { SchoolPageView } from './school-page-view.tsx';

interface Props {
  readonly state: AppState;
  readonly session: Session;
}

/** All students together, and the way to the record of each. */
export function ProgressView({ state, session }: Props) {
  const { overview } = state.library;
  if (overview === null) return <UnopenedLibrary notices={state.notices} session={session} />;
  return <Opened state={state} session={session} />;
}

function Opened({ state, session }: Props) {
  const heading = useRef<HTMLHeadingElement>(null);
  const {
    school: asked,
    library: { overview, changes },
  } = state;
  const { students } = overview!;
  const { answer: page, isAnswered, problem, again } = useAnswer('schoolProgress', asked, changes);
  const change = (part: Partial<SchoolAsked>) =>
    session.store.dispatch({ do: 'school', school: { ...asked, ...part } });
  const isMeasureGone = isAnswered && page === null && asked.measure !== AT_START.school.measure;
  useEffect(() => {
    // The last approach held to it was taken out; the level is always there.
    if (isMeasureGone) change({ measure: AT_START.school.measure });
  });
  const open = (studentId: string) => session.store.dispatch({ do: 'student', studentId });
  if (problem !== null && page === null)
    return <Unread what="library" problem={problem} again={again} back={null} />;
  return (
    <div className="school">
      <div className="row school-head">
        <Heading place={heading}>
          {page === null ? 'Progress' : needsSentence(page.needs, page.measures)}
        </Heading>
        {asked.isNamed ? <OpenStudent students={students} session={session} /> : null}
        <Tick words="Show names" value={asked.isNamed} say={(isNamed) => change({ isNamed })} />
        {page?.school.compared ? (
          <Button className="button" onPress={() => saveTable(page.school)}>
            Save as CSV
          </Button>
        ) : null}
      </div>
      {problem === null ? null : <ReadBefore problem={problem} again={again} />}
      {page === null ? (
        <NothingYet isBegun={overview!.approaches > 0} />
      ) : (
        <>
          <SchoolControls page={page} asked={asked} change={change} />
          <SchoolPageView page={page} open={open} />
        </>
      )}
    </div>
  );
}

/** With the names that are shown, or without. */
function saveTable(school: School): void {
  const name = `School by ${school.measure.id}`;
  download(name, { ending: 'csv', type: 'text/csv', text: schoolCsv(school) });
}

/** Until the first answer, and where nothing was ever judged. */
function NothingYet({ isBegun }: { readonly isBegun: boolean }) {
  return isBegun ? (
    <p className="working">The approaches are being read …</p>
  ) : (
    <p>No approach is kept yet. Bring logs in under Flights, and give them to students.</p>
  );
}
