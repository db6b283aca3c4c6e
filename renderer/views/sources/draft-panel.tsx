import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Difference } from '../../../core/records/differences.ts';
import type { FacilityEntry } from '../../state/app-state.ts';
import { nameIn } from '../../state/facility-draft.ts';
import type { Session } from '../../state/session.ts';
import type { Draft } from '../../worker/sources-protocol.ts';
import { Choice } from '../fields.tsx';
import { IssueList } from './issue-list.tsx';

interface Props {
  readonly draft: Draft;
  /** The user's own, to be compared with. */
  readonly own: readonly FacilityEntry[];
  readonly session: Session;
  /** Keeps a text as a new facility. */
  readonly take: (text: string) => void;
}

type Side = 'one' | 'other';

/** What a source gives of a facility, each value with where it is from, and beside one of the user's own. */
export function DraftPanel({ draft, own, session, take }: Props) {
  const [withId, setWithId] = useState('');
  const other = own.find(({ id }) => id === withId) ?? null;
  return (
    <section className="from-source" aria-labelledby="draft-heading">
      <h2 id="draft-heading">{draft.name}</h2>
      <IssueList issues={draft.drafted.issues} />
      <div className="row">
        <Button className="button primary" onPress={() => take(draft.text)}>
          Take it over
        </Button>
        {own.length === 0 ? null : (
          <Choice words="Put beside one of your own" value={withId} choose={setWithId}>
            <option value="">none</option>
            {own.map(({ id, text }) => (
              <option key={id} value={id}>
                {nameIn(text) || 'Without a name'}
              </option>
            ))}
          </Choice>
        )}
      </div>
      {other ? <Beside key={withId} draft={draft} other={other} session={session} take={take} /> : null}
      <Values draft={draft} />
    </section>
  );
}

function Values({ draft }: { readonly draft: Draft }) {
  return (
    <table className="draft-values">
      <caption className="aside">What it gives. Compare it with the current chart.</caption>
      <thead>
        <tr>
          <th scope="col">What</th>
          <th scope="col">Value</th>
          <th scope="col">From</th>
        </tr>
      </thead>
      <tbody>
        {draft.values.map(({ path, name, value, origin }) => (
          <tr key={path}>
            <th scope="row">{name}</th>
            <td>{value}</td>
            <td className="aside">{origin}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface BesideProps extends Omit<Props, 'own'> {
  readonly other: FacilityEntry;
}

/** Where the two do not agree: one of them is chosen for each, and what only one says is kept. */
function Beside({ draft, other, session, take }: BesideProps) {
  const [differences, setDifferences] = useState<readonly Difference[] | null>(null);
  const [choices, setChoices] = useState<Readonly<Record<string, Side>>>({});
  const facility = other.text;
  useEffect(() => {
    let isLast = true;
    const asked = session.sources.ask('differences', { draft: draft.drafted, facility });
    void asked.then((found) => isLast && setDifferences(found));
    return () => {
      isLast = false;
    };
  }, [session, draft, facility]);
  const merge = async () => {
    const made = await session.sources.ask('merge', { draft: draft.drafted, facility, choices });
    if (made) take(made.text);
  };
  if (differences === null) return null;
  const name = nameIn(facility) || 'your own';
  return (
    <section aria-label={`Beside ${name}`}>
      <h3>{differences.length === 0 ? `It agrees with ${name}` : `Where it differs from ${name}`}</h3>
      {differences.map(({ path, sentence }) => (
        <fieldset key={path} className="difference">
          <legend>{sentence}</legend>
          {(['one', 'other'] as const).map((side) => (
            <label key={side} className="tick">
              <input
                type="radio"
                name={path}
                checked={(choices[path] ?? 'one') === side}
                onChange={() => setChoices({ ...choices, [path]: side })}
              />{' '}
              {side === 'one' ? 'the new source' : name}
            </label>
          ))}
        </fieldset>
      ))}
      <p className="aside">What only one of the two says is kept.</p>
      <Button className="button" onPress={() => void merge()}>
        Take over the two as one
      </Button>
    </section>
  );
}
