import { useState } from 'react';
import { Button, FileTrigger } from 'react-aria-components';
import type { Overview } from '../../../electron/bridge/library-calls.ts';
import type { AppState, Bringing } from '../../state/app-state.ts';
import { logsAmong } from '../../state/logs-among.ts';
import type { Whose } from '../../state/own-library.ts';
import type { Session } from '../../state/session.ts';
import { Choice, Tick } from '../fields.tsx';
import { PersonField } from './person-field.tsx';

interface Props {
  readonly state: AppState;
  readonly overview: Overview;
  readonly session: Session;
}

/** Logs and people come in from files. */
export function BringIn({ state, overview, session }: Props) {
  const { bringing } = state.library;
  const [whose, setWhose] = useState<Whose>({ by: 'folder', addsStudents: false });
  const [wrong, setWrong] = useState<string | null>(null);
  const isGoing = bringing?.state === 'going' || bringing?.state === 'stopping';
  const bring = (files: FileList | null) => {
    if (whose.by === 'name' && whose.name.trim() === '') setWrong('Say whose they are first.');
    else void session.library.bringIn(logsAmong(files), whose);
  };
  const choose = (chosen: Whose) => {
    setWhose(chosen);
    setWrong(null);
  };
  return (
    <section className="bring-in" aria-label="Bring in">
      <div className="boxed">
        <h2>Logs</h2>
        <p>
          Each is debriefed at every facility that it was flown to, by the standard chosen last, and kept.
          What is kept already is passed over, so that what was stopped can be gone on with.
        </p>
        <WhoseChoice whose={whose} choose={choose} wrong={wrong} overview={overview} />
        <div className="row">
          <FileTrigger acceptDirectory onSelect={bring}>
            <Button className="button primary" isDisabled={isGoing}>
              Choose a folder of logs…
            </Button>
          </FileTrigger>
          <FileTrigger allowsMultiple onSelect={bring}>
            <Button className="button" isDisabled={isGoing}>
              Choose logs…
            </Button>
          </FileTrigger>
        </div>
        {bringing === null ? null : <Progress bringing={bringing} session={session} />}
      </div>
      <Roster session={session} />
    </section>
  );
}

interface WhoseProps {
  readonly whose: Whose;
  readonly choose: (whose: Whose) => void;
  readonly wrong: string | null;
  readonly overview: Overview;
}

function WhoseChoice({ whose, choose, wrong, overview }: WhoseProps) {
  const chosen = (by: string): Whose =>
    by === 'name' ? { by, name: '' } : by === 'folder' ? { by, addsStudents: false } : { by: 'nobody' };
  return (
    <>
      <Choice words="Whose they are" value={whose.by} choose={(by) => choose(chosen(by))}>
        <option value="folder">named by their folders</option>
        <option value="name">one student’s</option>
        <option value="nobody">not said yet</option>
      </Choice>
      {whose.by === 'folder' ? (
        <Tick
          words="Add students who are not here yet"
          value={whose.addsStudents}
          say={(addsStudents) => choose({ ...whose, addsStudents })}
        />
      ) : null}
      {whose.by === 'name' ? (
        <PersonField
          words="Student"
          value={whose.name}
          role="student"
          overview={overview}
          change={(name) => choose({ ...whose, name })}
          wrong={wrong}
        />
      ) : null}
    </>
  );
}

function Progress({ bringing, session }: { readonly bringing: Bringing; readonly session: Session }) {
  const { total, done, refused, withNobody, state } = bringing;
  const isGoing = state === 'going' || state === 'stopping';
  return (
    <div className="brought">
      {isGoing ? (
        <div className="working row">
          <progress aria-label="Bringing logs in" value={done} max={total} />
          <Button className="button" isDisabled={state === 'stopping'} onPress={() => session.library.stop()}>
            Stop
          </Button>
        </div>
      ) : null}
      {isGoing ? <p>{broughtWords(bringing)}</p> : null}
      {/* Read out at every tenth part and at the end: at every log it would never be done speaking. */}
      <p role="status" className={isGoing ? 'unseen' : ''}>
        {isGoing ? tenthWords(bringing) : broughtWords(bringing)}
      </p>
      <Told words={`${count(refused.length, 'was', 'were')} not kept`} lines={refused} />
      <Told words={`${count(withNobody.length, 'is', 'are')} nobody’s yet, and why`} lines={withNobody} />
      <Told
        words={`${count(bringing.cautioned, 'has', 'have')} something to be checked`}
        lines={bringing.cautions}
      />
      {isGoing ? null : (
        <Button className="button" onPress={() => session.library.putAway()}>
          Close
        </Button>
      )}
    </div>
  );
}

/** What there is to say of single logs, folded away; nothing where there is nothing. */
function Told({ words, lines }: { readonly words: string; readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <details>
      <summary>{words}</summary>
      <ul>
        {lines.map((line, i) => (
          <li key={`${i} ${line}`}>{line}</li>
        ))}
      </ul>
    </details>
  );
}

function count(logs: number, one: string, several: string): string {
  return `${logs} ${logs === 1 ? one : several}`;
}

function tenthWords({ total, done }: Bringing): string {
  const tenths = Math.floor((10 * done) / total);
  return tenths === 0 ? 'Bringing logs in.' : `${tenths * 10} percent brought in.`;
}

/** What has come of it so far, as one line. */
function broughtWords(bringing: Bringing): string {
  const { total, done, kept, approaches, known, added, withNobody, cautioned, state } = bringing;
  const parts = [
    `${done} of ${total} ${total === 1 ? 'log' : 'logs'}`,
    `${kept} kept with ${approaches} ${approaches === 1 ? 'approach' : 'approaches'}`,
    ...(known > 0 ? [`${known} here already`] : []),
    ...(withNobody.length > 0 ? [`${withNobody.length} of them nobody's yet`] : []),
    ...(cautioned > 0 ? [`${cautioned} to be checked`] : []),
  ];
  const who = added.length > 0 ? ` Added: ${added.join(', ')}.` : '';
  const end =
    state === 'stopped'
      ? ' Stopped: choose the same again to go on.'
      : state === 'stopping'
        ? ' Stopping …'
        : '';
  return `${parts.join(', ')}.${who}${end}`;
}

function Roster({ session }: { readonly session: Session }) {
  const [told, tell] = useState<string | null>(null);
  const read = async (files: FileList | null) => {
    const file = files?.[0];
    if (file) tell(await session.library.readRoster(file));
  };
  return (
    <div className="boxed">
      <h2>People</h2>
      <p>
        A table as CSV with a line for everybody: a column “name”, or “first name” and “last name”, and if you
        like a column “role” that says student or instructor. Nobody is removed by it.
      </p>
      <FileTrigger onSelect={(files) => void read(files)}>
        <Button className="button">Choose a roster…</Button>
      </FileTrigger>
      {told === null ? null : (
        <p role="status" className="told">
          {told}
        </p>
      )}
    </div>
  );
}
