import { useState } from 'react';
import { Button } from 'react-aria-components';
import type {
  FlightFilter,
  FlightOrder,
  FlightRow,
  Overview,
} from '../../../electron/bridge/library-calls.ts';
import type { AppState } from '../../state/app-state.ts';
import type { Session } from '../../state/session.ts';
import { BareLogs } from './bare-logs.tsx';
import { BringIn } from './bring-in.tsx';
import { FlightFilters, NO_FILTER } from './flight-filters.tsx';
import { FlightList } from './flight-list.tsx';
import { GiveTo } from './give-to.tsx';
import { LastMove } from './last-move.tsx';
import { OtherVersions } from './other-versions.tsx';
import { StudentPanel } from './student-panel.tsx';
import { useFlightRows } from './use-flight-rows.ts';
import { WholeLibrary } from './whole-library.tsx';

interface Props {
  readonly state: AppState;
  readonly session: Session;
}

type Panel = 'bring-in' | 'whole' | null;

/** All flights that are kept: found, opened, given to somebody; and what is done with the library as a whole. */
export function LibraryView({ state, session }: Props) {
  const { overview, bringing } = state.library;
  const [chosen, choose] = useState<Panel>(null);
  if (overview === null) return <p role="status">Opening the library …</p>;
  // Nothing is there yet: what can be done is shown at once.
  const panel = chosen ?? (bringing !== null || overview.approaches === 0 ? 'bring-in' : null);
  return (
    <div className="library">
      <div className="library-head">
        <h1>Flights</h1>
        <p className="aside">{holds(overview)}</p>
        <div className="row">
          <Button
            className="button"
            aria-expanded={panel === 'bring-in'}
            onPress={() => choose(panel === 'bring-in' ? null : 'bring-in')}
          >
            Bring in…
          </Button>
          <Button
            className="button"
            aria-expanded={panel === 'whole'}
            onPress={() => choose(panel === 'whole' ? null : 'whole')}
          >
            Back up, export…
          </Button>
        </div>
      </div>
      {panel === 'bring-in' ? <BringIn state={state} overview={overview} session={session} /> : null}
      {panel === 'whole' ? <WholeLibrary overview={overview} session={session} /> : null}
      <LastMove move={overview.lastMove} session={session} />
      <OtherVersions count={overview.ofOtherVersions} session={session} />
      {overview.approaches === 0 ? null : <Kept state={state} overview={overview} session={session} />}
      <BareLogs changes={state.library.changes} session={session} />
    </div>
  );
}

function holds({ isBegun, approaches, students, folder }: Overview): string {
  if (!isBegun) return 'Nothing is kept yet. What you keep lies on this machine and goes nowhere else.';
  const people = students.length === 1 ? '1 student' : `${students.length} students`;
  const flown = approaches === 1 ? '1 approach' : `${approaches.toLocaleString('en')} approaches`;
  return `${flown} of ${people}, kept in ${folder}`;
}

interface KeptProps extends Props {
  readonly overview: Overview;
}

function Kept({ state, overview, session }: KeptProps) {
  const [filter, setFilter] = useState<FlightFilter>(NO_FILTER);
  const [order, sort] = useState<FlightOrder>({ by: 'flown', isDown: true });
  const [marked, setMarked] = useState<ReadonlySet<string>>(new Set());
  const tell = session.library.tell;
  const { total, row, need } = useFlightRows({ filter, order, changes: state.library.changes, tell });
  const student = filter.student !== null && filter.student !== 'nobody' ? filter.student.id : null;
  const mark = ({ sha256 }: FlightRow, isMarked: boolean) => {
    const next = new Set(marked);
    if (isMarked) next.add(sha256);
    else next.delete(sha256);
    setMarked(next);
  };
  return (
    <>
      <FlightFilters
        overview={overview}
        filter={filter}
        change={(change) => setFilter({ ...filter, ...change })}
        clear={() => setFilter(NO_FILTER)}
      />
      {student === null ? null : (
        <StudentPanel key={student} id={student} overview={overview} session={session} />
      )}
      <GiveTo
        marked={marked}
        total={total}
        overview={overview}
        session={session}
        markAll={async () => setMarked(new Set(await session.library.logsOf(filter)))}
        unmark={() => setMarked(new Set())}
      />
      {total === null ? null : total === 0 ? (
        <p>No approach is like that. “Show all” shows every one.</p>
      ) : (
        <FlightList
          total={total}
          row={row}
          need={need}
          order={order}
          sort={sort}
          isMarked={({ sha256 }) => marked.has(sha256)}
          mark={mark}
          open={({ debriefId }) => void session.library.open(debriefId)}
          showLesson={({ lessonId }) => session.store.dispatch({ do: 'lesson', lessonId })}
        />
      )}
    </>
  );
}
