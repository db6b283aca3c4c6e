import type { SchoolPage } from '../../../core/progress/school/school-page.ts';
import { GroupsPanel } from './groups-panel.tsx';
import { LessonSpread } from './lesson-spread.tsx';
import { NeedsTable } from './needs-table.tsx';
import { OutcomesTable } from './outcomes-table.tsx';
import { SchoolCoverage } from './school-coverage.tsx';
import { SchoolMatrix } from './school-matrix.tsx';

interface Props {
  readonly page: SchoolPage;
  /** Opens a student. */
  readonly open: (studentId: string) => void;
}

/** What the students need, how their lessons went, and what can be said of groups of them. */
export function SchoolPageView({ page: { school, measures, needs }, open }: Props) {
  const { compared, measure, students, distribution, outcomes, groups, notes } = school;
  if (compared === null)
    return (
      <>
        <p>Nothing is left to be shown by what is let in.</p>
        <SchoolCoverage school={school} />
      </>
    );
  return (
    <>
      <p className="aside">
        {compared.approaches} approaches of {compared.students}{' '}
        {compared.students === 1 ? 'student' : 'students'}, judged by {compared.standardSource}; debriefed by
        version {compared.engineVersion}.
      </p>
      <NeedsTable needs={needs} measures={measures} open={open} />
      <div className="school-parts">
        <LessonSpread measure={measure} distribution={distribution} />
        {outcomes === null ? null : <OutcomesTable outcomes={outcomes} />}
      </div>
      {groups === null ? null : <GroupsPanel groups={groups} measure={measure} />}
      <SchoolMatrix students={students} measure={measure} open={open} />
      <SchoolCoverage school={school} />
      {notes.length === 0 ? null : (
        <section>
          <h2>What it stands on</h2>
          {notes.map((note) => (
            <p key={note}>{note}</p>
          ))}
        </section>
      )}
    </>
  );
}
