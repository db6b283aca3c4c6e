import type { RefObject } from 'react';
import { EVERY_FLIGHT } from '../../../electron/bridge/every-flight.ts';
import type { FlightFilter, FlightRow, Overview } from '../../../electron/bridge/library-calls.ts';
import type { AppState, FlightListState } from '../../state/app-state.ts';
import type { Session } from '../../state/session.ts';
import { FlightFilters } from './flight-filters.tsx';
import { FlightList } from './flight-list.tsx';
import { GiveTo } from './give-to.tsx';
import { LessonLinks } from './lesson-links.tsx';
import { standardWords } from './standard-words.ts';
import { StudentPanel } from './student-panel.tsx';
import { useFlightRows } from './use-flight-rows.ts';
import { useNotShown } from './use-not-shown.ts';
import { useOnce } from './use-once.ts';

interface Props {
  readonly state: AppState;
  readonly overview: Overview;
  readonly session: Session;
  /** Of the view: the keyboard is put there when what had it has gone. */
  readonly heading: RefObject<HTMLHeadingElement | null>;
}

/** The flights that are kept, found and marked; whose lessons they are, and to whom they are given. */
export function KeptFlights({ state, overview, session, heading }: Props) {
  const filter = stillThere(state.flightList.filter, overview);
  const { marked } = state.flightList;
  const { setFilter, setMarked } = settersOf(session);
  const { changes } = state.library;
  const notShown = useNotShown({ marked, filter, changes, tell: session.library.tell });
  const student = studentOf(filter);
  const unmark = () => setMarked(new Set());
  const toHeading = () => heading.current?.focus();
  const deleted = () => {
    setFilter({ student: null });
    unmark();
    toHeading();
  };
  const list = useFlightList(state, session, filter);
  return (
    <>
      <FlightFilters
        overview={overview}
        filter={filter}
        change={setFilter}
        clear={() => setFilter(EVERY_FLIGHT)}
      />
      {filter.student === null ? null : (
        <Whose key={student} {...{ student, overview, changes, session, deleted }} />
      )}
      <GiveTo
        marked={marked}
        notShown={notShown}
        whose={overview.students.find(({ id }) => id === student)?.name ?? null}
        total={list.total}
        overview={overview}
        session={session}
        markAll={async () => setMarked(new Set(await session.library.logsOf(filter)))}
        unmark={unmark}
        given={() => {
          unmark();
          toHeading();
        }}
      />
      {list.total === null ? null : list.total === 0 ? (
        <p>No approach matches. “Show all” shows every one.</p>
      ) : (
        <FlightList
          {...list}
          total={list.total}
          isMarked={({ sha256 }) => marked.has(sha256)}
          mark={(row, isMarked) => setMarked(withMark(marked, row, isMarked))}
        />
      )}
    </>
  );
}

interface WhoseProps extends Pick<Props, 'overview' | 'session'> {
  /** Null: nobody's. */
  readonly student: string | null;
  readonly changes: number;
  readonly deleted: () => void;
}

/** What stands above the list of one student, or of nobody. */
function Whose({ student, overview, changes, session, deleted }: WhoseProps) {
  return (
    <>
      {student === null ? null : (
        <StudentPanel id={student} overview={overview} session={session} deleted={deleted} />
      )}
      <LessonLinks studentId={student} changes={changes} session={session} />
    </>
  );
}

/** The list in its order, and what is done with one of its rows. */
function useFlightList(state: AppState, session: Session, filter: FlightFilter) {
  const { tell } = session.library;
  const { order } = state.flightList;
  const rows = useFlightRows({ filter, order, changes: state.library.changes, tell });
  const { once } = useOnce();
  return {
    ...rows,
    order,
    sort: settersOf(session).setOrder,
    open: ({ debriefId }: FlightRow) => once(() => session.library.open(debriefId)),
    standard: (id: string) => standardWords(state, id),
    showLesson: ({ lessonId }: FlightRow) => session.store.dispatch({ do: 'lesson', lessonId }),
  };
}

/** What is changed stays until the window is closed, wherever one goes meanwhile. */
function settersOf({ store }: Session) {
  const set = (change: Partial<FlightListState>) => store.dispatch({ do: 'flight-list', change });
  return {
    // In the filter as it is by then: words are said a moment after they were typed.
    setFilter: (part: Partial<FlightFilter>) =>
      set({ filter: { ...store.state().flightList.filter, ...part } }),
    setOrder: (order: FlightListState['order']) => set({ order }),
    setMarked: (marked: ReadonlySet<string>) => set({ marked }),
  };
}

function withMark(
  marked: ReadonlySet<string>,
  { sha256 }: FlightRow,
  isMarked: boolean,
): ReadonlySet<string> {
  const next = new Set(marked);
  if (isMarked) next.add(sha256);
  else next.delete(sha256);
  return next;
}

/** The student whose list it is; null where it is everybody's or nobody's. */
function studentOf({ student }: FlightFilter): string | null {
  return student === null || student === 'nobody' ? null : student.id;
}

/** A filter without what has gone from the library, as with a student who was deleted. */
function stillThere(filter: FlightFilter, { students, facilities }: Overview): FlightFilter {
  const student = studentOf(filter);
  return {
    ...filter,
    student: student === null || students.some(({ id }) => id === student) ? filter.student : null,
    facility: filter.facility !== null && facilities.includes(filter.facility) ? filter.facility : null,
  };
}
