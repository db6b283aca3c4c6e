import { useState } from 'react';
import { Button, FileTrigger } from 'react-aria-components';
import { taskSentences } from '../../../core/report/debrief-text.ts';
import type { Standard } from '../../../core/standard/standard.ts';
import { DEFAULT_STANDARD, SHIPPED, standardById } from '../../../core/standard/standards.ts';
import type { AppState } from '../../state/app-state.ts';
import type { Session } from '../../state/session.ts';
import { current } from '../current.ts';
import { useKept } from '../use-kept.ts';
import { StandardEditor } from './standard-editor.tsx';
import { StandardFactsTable } from './standard-facts-table.tsx';
import { ownTitle } from './standard-options.tsx';

interface Props {
  readonly state: AppState;
  readonly session: Session;
}

/** What approaches can be held to: the limits of each standard in words, and the user's own to be changed. */
export function StandardsView({ state, session }: Props) {
  const [lastChosen, choose] = useState<string>(DEFAULT_STANDARD.id);
  // The one that was chosen may have been removed.
  const chosenId = state.standards.some(({ id }) => id === lastChosen)
    ? lastChosen
    : (standardById(lastChosen) ?? DEFAULT_STANDARD).id;
  const chooseKept = useKept(choose);
  const { standards } = session;
  const bringIn = (file: File) => chooseKept(() => standards.bringIn(file));
  return (
    <div className="standards">
      <section className="side" aria-labelledby="standards-heading">
        <h1 id="standards-heading">Standards</h1>
        <ul>
          {SHIPPED.map(({ id, title }) => (
            <li key={id}>
              <Place id={id} words={title} isChosen={id === chosenId} choose={choose} />
            </li>
          ))}
        </ul>
        <h2>Your own</h2>
        {state.standards.length === 0 ? (
          <p className="aside">None yet. Make one from a standard above, or bring one in.</p>
        ) : (
          <ul>
            {state.standards.map((entry) => (
              <li key={entry.id}>
                <Place
                  id={entry.id}
                  words={ownTitle(entry)}
                  isChosen={entry.id === chosenId}
                  choose={choose}
                />
                {state.notes.drafts?.[entry.id] === undefined ? null : (
                  <span className="aside"> change not kept yet</span>
                )}
              </li>
            ))}
          </ul>
        )}
        <FileTrigger onSelect={(files) => files?.[0] && bringIn(files[0])}>
          <Button className="button">Bring one in from a file…</Button>
        </FileTrigger>
      </section>
      <Chosen
        chosenId={chosenId}
        state={state}
        session={session}
        makeFrom={(shipped) => chooseKept(() => standards.makeFrom(shipped))}
      />
    </div>
  );
}

interface PlaceProps {
  readonly id: string;
  readonly words: string;
  readonly isChosen: boolean;
  readonly choose: (id: string) => void;
}

function Place({ id, words, isChosen, choose }: PlaceProps) {
  return (
    <Button className="place" {...current(isChosen)} onPress={() => choose(id)}>
      {words}
    </Button>
  );
}

interface ChosenProps extends Props {
  readonly chosenId: string;
  readonly makeFrom: (shipped: Standard) => void;
}

/** The user's own to be changed, or a shipped one to make one's own from. */
function Chosen({ chosenId, state, session, makeFrom }: ChosenProps) {
  const own = state.standards.find(({ id }) => id === chosenId);
  if (own)
    return (
      <StandardEditor
        key={own.id}
        entry={own}
        draft={state.notes.drafts?.[own.id]}
        otherIds={state.standards.flatMap(({ id, reading }) =>
          id === own.id ? [] : (reading?.standard?.id ?? []),
        )}
        session={session}
      />
    );
  const shipped = standardById(chosenId) ?? DEFAULT_STANDARD;
  return (
    <section className="standard" aria-label={shipped.title}>
      <StandardFactsTable standard={shipped} />
      <Tasks standard={shipped} />
      <div className="row">
        <Button className="button" onPress={() => makeFrom(shipped)}>
          Make your own from this
        </Button>
        <span className="aside">A copy of it under a name of its own, in which you set the limits.</span>
      </div>
    </section>
  );
}

function Tasks({ standard }: { readonly standard: Standard }) {
  return taskSentences({ standard }).map(([covers, cannotSee]) => (
    <p key={covers} className="aside">
      {covers} {cannotSee}
    </p>
  ));
}
