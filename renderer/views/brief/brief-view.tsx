import type { AppState, BriefTyped } from '../../state/app-state.ts';
import type { Session } from '../../state/session.ts';
import { BriefForm } from './brief-form.tsx';
import { BriefSheet } from './brief-sheet.tsx';
import { useLastTime } from './use-last-time.ts';

interface Props {
  readonly state: AppState;
  readonly session: Session;
}

/** Before the flight: what is known of it, and the sheet that comes of it beside. */
export function BriefView({ state, session }: Props) {
  const { brief, facilities, library } = state;
  const students = library.overview?.students ?? [];
  const student = students.find(({ id }) => id === brief.studentId) ?? null;
  const lastTime = useLastTime(student, library.changes);
  const say = (change: Partial<BriefTyped>) => session.store.dispatch({ do: 'brief', brief: change });
  const facility = facilities.find(({ id }) => id === brief.facilityId) ?? null;
  return (
    <div className="brief">
      <BriefForm state={state} lastTime={lastTime} say={say} />
      {facility === null ? (
        <p className="empty">Choose a facility to see its sheet.</p>
      ) : (
        <BriefSheet
          key={facility.id}
          facility={facility}
          goals={lastTime.goals}
          state={state}
          session={session}
        />
      )}
    </div>
  );
}
