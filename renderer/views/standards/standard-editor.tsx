import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { StandardEntry } from '../../state/app-state.ts';
import type { Session } from '../../state/session.ts';
import type { StandardReading } from '../../worker/protocol.ts';
import { Removal } from '../removal.tsx';
import { StandardFactsTable } from './standard-facts-table.tsx';
import { ownTitle } from './standard-options.tsx';

interface Props {
  readonly entry: StandardEntry;
  /** What was typed at it and not kept yet. */
  readonly draft: string | undefined;
  /** Ids in the files of the others: those of two standards tell their answers apart. */
  readonly otherIds: readonly string[];
  readonly session: Session;
}

/** The file of a standard of the user's own, checked while it is written; what is typed lies in the notes until it is kept or undone. */
export function StandardEditor({ entry, draft, otherIds, session }: Props) {
  const { standards } = session;
  const text = draft ?? entry.text;
  const reading = useReading(session, entry, text);
  const isChanged = text !== entry.text;
  const id = reading?.standard?.id;
  return (
    <section className="standard" aria-label={ownTitle(entry)}>
      {id !== undefined && otherIds.includes(id) ? (
        <p className="notice">
          Another of your standards has the id “{id}” too. Give each its own, so that their debriefs can be
          told apart.
        </p>
      ) : null}
      <div className="beside">
        <div>
          <label className="field">
            <span>Its file</span>
            <textarea
              spellCheck={false}
              rows={30}
              value={text}
              onChange={({ target: { value } }) =>
                standards.type(entry.id, value === entry.text ? null : value)
              }
            />
          </label>
          <div className="row">
            <Button
              className="button primary"
              isDisabled={!isChanged}
              onPress={() => void standards.keep(entry.id, text)}
            >
              Keep the change
            </Button>
            <Button className="button" isDisabled={!isChanged} onPress={() => standards.type(entry.id, null)}>
              Undo it
            </Button>
            <a
              className="button"
              download={`${id ?? 'standard'}.json`}
              href={`data:application/json,${encodeURIComponent(text)}`}
            >
              Save as a file
            </a>
            <Removal remove={() => void standards.remove(entry.id)} />
          </div>
        </div>
        <Checked reading={reading} />
      </div>
    </section>
  );
}

/** What a text says, as the worker reads it; the last one while it reads, and null before the first. */
function useReading(session: Session, entry: StandardEntry, text: string): StandardReading | null {
  const [read, setRead] = useState<StandardReading | null>(null);
  useEffect(() => {
    let isCurrent = true;
    void session.standards.read(text).then((found) => isCurrent && setRead(found));
    return () => {
      isCurrent = false;
    };
  }, [session, text]);
  return read ?? entry.reading;
}

/** What is wrong with the text, all of it, or the limits that it sets. */
function Checked({ reading }: { readonly reading: StandardReading | null }) {
  if (reading === null) return <p>Checking …</p>;
  if (reading.standard) return <StandardFactsTable standard={reading.standard} />;
  return (
    <div className="failed" role="status">
      <p>
        <strong>This standard cannot be used yet.</strong>
      </p>
      <ul>
        {reading.problems.map(({ message, tip }) => (
          <li key={message}>
            {message} {tip}
          </li>
        ))}
      </ul>
    </div>
  );
}
