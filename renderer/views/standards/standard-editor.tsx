import type { StandardEntry } from '../../state/app-state.ts';
import type { Session } from '../../state/session.ts';
import type { StandardReading } from '../../worker/protocol.ts';
import { EditorActions } from '../editor-actions.tsx';
import { useReading } from '../use-reading.ts';
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
  const { reading } = useReading(text, entry, standards.read);
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
          <EditorActions
            text={text}
            file={`${id ?? 'standard'}.json`}
            change={{
              isChanged: text !== entry.text,
              keep: () => void standards.keep(entry.id, text),
              undo: () => standards.type(entry.id, null),
              remove: () => void standards.remove(entry.id),
            }}
          />
        </div>
        <Checked reading={reading} />
      </div>
    </section>
  );
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
