import { Button, FileTrigger } from 'react-aria-components';
import type { AppState } from '../state/app-state.ts';
import { logsAmong } from '../state/logs-among.ts';
import type { Session } from '../state/session.ts';
import { Tick } from './fields.tsx';
import { OpenStudent } from './open-student.tsx';
import { RecentList } from './recent-list.tsx';

/** What can be done first: open a log, go on with one opened lately, or try a sample. */
export function StartView({ state, session }: { readonly state: AppState; readonly session: Session }) {
  const { notes } = state;
  const { settings } = notes;
  return (
    <div className="start">
      <section aria-labelledby="open-heading">
        <h1 id="open-heading">Open a track log</h1>
        <p>
          A CSV or GPX file as avionics or a phone export it. Drop it anywhere on this page, or choose it;
          several at once will do. It is read here, on this machine, and goes nowhere else.
        </p>
        <FileTrigger allowsMultiple onSelect={(files) => void session.openFiles([...(files ?? [])])}>
          <Button className="button primary">Choose a file…</Button>
        </FileTrigger>
        <FileTrigger acceptDirectory onSelect={(files) => void session.openFiles(logsAmong(files))}>
          <Button className="button">Choose a folder…</Button>
        </FileTrigger>
        <Tick
          words="Ask the student first, before a debrief is shown"
          value={settings.asksFirst ?? false}
          say={(asksFirst) => void session.saveNotes({ ...notes, settings: { ...settings, asksFirst } })}
        />
      </section>
      <div>
        <Students state={state} session={session} />
        <RecentList state={state} session={session} />
        <section aria-labelledby="samples-heading">
          <h2 id="samples-heading">Or try a sample</h2>
          <p>Invented flights by invented people at invented aerodromes.</p>
          <ul className="samples">
            {state.samples.map((sample) => (
              <li key={sample.file}>
                <Button className="sample" onPress={() => void session.openSample(sample)}>
                  <span className="shows">{sample.shows}</span>
                  <span className="aside">
                    {sample.flown} · {sample.file}
                  </span>
                </Button>
              </li>
            ))}
          </ul>
        </section>
      </div>
    </div>
  );
}

/** A student of the library, where there is one. */
function Students({ state, session }: { readonly state: AppState; readonly session: Session }) {
  const students = state.library.overview?.students ?? [];
  if (students.length === 0) return null;
  return (
    <section aria-labelledby="student-heading">
      <h2 id="student-heading">Or go on with a student</h2>
      <OpenStudent students={students} session={session} />
    </section>
  );
}
