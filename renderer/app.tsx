import { Suspense, useEffect, useRef, useSyncExternalStore } from 'react';
import { Button, DropZone, FileTrigger, type FileDropItem } from 'react-aria-components';
import { CAUTIONS } from '../core/debrief/cautions.ts';
import type { AppState, View } from './state/app-state.ts';
import type { Session } from './state/session.ts';
import {
  BriefView,
  FacilitiesView,
  fetchLaterViews,
  FlightView,
  LessonView,
  LibraryView,
  ProgressView,
  StandardsView,
  StudentView,
} from './later-views.ts';
import { Boundary } from './views/boundary.tsx';
import { current } from './views/current.ts';
import { StartView } from './views/start-view.tsx';

/** The whole page: what can be gone to, what is open, and the view that is shown. A log can be dropped anywhere. */
export function App({ session }: { readonly session: Session }) {
  const state = useSyncExternalStore(session.store.subscribe, session.store.state);
  const { theme } = state.notes.settings;
  useEffect(() => {
    document.documentElement.dataset['theme'] = theme;
  }, [theme]);
  useEffect(fetchLaterViews, []);
  const drop = async (items: readonly FileDropItem[]) =>
    session.openFiles(await Promise.all(items.map((item) => item.getFile())));
  return (
    <DropZone
      className="app"
      aria-label="Drop a log anywhere to open it"
      onDrop={({ items }) => void drop(items.filter((item): item is FileDropItem => item.kind === 'file'))}
    >
      <Header state={state} session={session} />
      <Notices state={state} session={session} />
      <main>
        <Boundary
          key={state.view === 'flight' ? state.flightId : state.view}
          reload={() => void session.reload()}
        >
          <Suspense fallback={null}>
            <Shown state={state} session={session} />
          </Suspense>
        </Boundary>
      </main>
      <footer className="cautions">
        {CAUTIONS.map((caution) => (
          <span key={caution}>{caution} </span>
        ))}
      </footer>
    </DropZone>
  );
}

interface Props {
  readonly state: AppState;
  readonly session: Session;
}

function Shown({ state, session }: Props) {
  const flight = state.flights.find(({ id }) => id === state.flightId);
  if (state.view === 'facilities') return <FacilitiesView state={state} session={session} />;
  if (state.view === 'brief') return <BriefView state={state} session={session} />;
  if (state.view === 'standards') return <StandardsView state={state} session={session} />;
  if (state.view === 'library') return <LibraryView state={state} session={session} />;
  if (state.view === 'lesson' && state.lessonId !== null)
    return <LessonView key={state.lessonId} id={state.lessonId} state={state} session={session} />;
  if (state.view === 'progress') return <ProgressView state={state} session={session} />;
  if (state.view === 'student' && state.studentId !== null)
    return <StudentView key={state.studentId} id={state.studentId} state={state} session={session} />;
  if (state.view === 'flight' && flight)
    return <FlightView key={flight.id} flight={flight} state={state} session={session} />;
  return <StartView state={state} session={session} />;
}

const PLACES: readonly (readonly [View, string])[] = [
  ['start', 'Start'],
  ['library', 'Flights'],
  ['progress', 'Progress'],
  ['facilities', 'Facilities'],
  ['brief', 'Brief'],
  ['standards', 'Standards'],
];

function Header({ state, session }: Props) {
  const show = (view: View) => session.store.dispatch({ do: 'show', view });
  return (
    <header className="head">
      <strong className="name">Halfdot</strong>
      <nav aria-label="Places">
        {PLACES.map(([view, words]) => (
          <Button key={view} className="place" {...current(state.view === view)} onPress={() => show(view)}>
            {words}
          </Button>
        ))}
      </nav>
      <OpenLogs state={state} session={session} />
      <FileTrigger allowsMultiple onSelect={(files) => void session.openFiles([...(files ?? [])])}>
        <Button className="button">Open a log…</Button>
      </FileTrigger>
      <DotsChoice state={state} session={session} />
      <ThemeChoice state={state} session={session} />
    </header>
  );
}

/** One line of logs, however many: the one that is shown stands where it is seen. */
function OpenLogs({ state, session }: Props) {
  const shownId = state.view === 'flight' ? state.flightId : null;
  const list = useRef<HTMLElement>(null);
  useEffect(() => {
    const shown = shownId && list.current?.querySelector('[aria-current]')?.closest('.open-log');
    if (shown) shown.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, [shownId]);
  return (
    <nav ref={list} aria-label="Open logs" className="open-logs">
      {state.flights.map(({ id, name }) => (
        <span key={id} className="open-log">
          <Button
            className="place"
            {...current(shownId === id)}
            onPress={() => session.store.dispatch({ do: 'choose', id })}
          >
            {name}
          </Button>
          <Button className="small" aria-label={`Close ${name}`} onPress={() => session.close(id)}>
            ×
          </Button>
        </span>
      ))}
    </nav>
  );
}

function ThemeChoice({ state, session }: Props) {
  const { notes } = state;
  return (
    <label className="theme">
      <span>Look</span>
      <select
        value={notes.settings.theme}
        onChange={({ target }) =>
          void session.saveNotes({
            ...notes,
            settings: { ...notes.settings, theme: target.value as 'system' | 'light' | 'dark' },
          })
        }
      >
        <option value="system">as the system</option>
        <option value="light">light</option>
        <option value="dark">dark</option>
      </select>
    </label>
  );
}

function DotsChoice({ state, session }: Props) {
  const { notes } = state;
  return (
    <label className="theme">
      <span>Dots to full scale</span>
      <select
        value={notes.settings.dots}
        onChange={({ target }) =>
          void session.saveNotes({
            ...notes,
            settings: { ...notes.settings, dots: target.value === '5' ? 5 : 2 },
          })
        }
      >
        <option value={2}>2</option>
        <option value={5}>5</option>
      </select>
    </label>
  );
}

function Notices({ state, session }: Props) {
  return (
    <div aria-live="polite" className="notices">
      {state.done === null ? null : <p className="done">{state.done}</p>}
      {state.notices.map((message, index) => (
        <p key={`${index} ${message}`} className="notice">
          {message}{' '}
          <Button className="small" onPress={() => session.store.dispatch({ do: 'put-away', index })}>
            Put away
          </Button>
        </p>
      ))}
    </div>
  );
}
