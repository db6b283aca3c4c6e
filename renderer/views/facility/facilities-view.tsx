import { useState } from 'react';
import { Button, FileTrigger } from 'react-aria-components';
import type { AppState, FacilityEntry } from '../../state/app-state.ts';
import { draftOf, nameIn, NEW_FACILITY } from '../../state/facility-draft.ts';
import { unconfirmedIn } from '../../state/facility-origin.ts';
import type { Session } from '../../state/session.ts';
import { current } from '../current.ts';
import { SourceView, type SourceKind } from '../sources/source-view.tsx';
import { useKept } from '../use-kept.ts';
import { FacilityEditor } from './facility-editor.tsx';

interface Props {
  readonly state: AppState;
  readonly session: Session;
}

/** The facilities that can be flown to: what each says of itself, and the user's own to be changed. */
export function FacilitiesView({ state, session }: Props) {
  const { facilities, facilityId } = state;
  const chosen = facilities.find(({ id }) => id === facilityId) ?? null;
  const lookAt = (id: string) => session.store.dispatch({ do: 'look-at', facilityId: id });
  const keep = useKept(lookAt);
  const add = (text: string) => keep(() => session.facilities.add(text));
  const [source, setSource] = useState<SourceKind | null>(null);
  const choose = (id: string) => {
    setSource(null);
    lookAt(id);
  };
  const takeOver = (text: string) => {
    setSource(null);
    add(text);
  };
  return (
    <div className="facilities">
      <section className="side" aria-labelledby="facilities-heading">
        <h1 id="facilities-heading">Facilities</h1>
        <ul>
          {facilities.map((facility) => (
            <li key={facility.id}>
              <Listed
                facility={facility}
                draft={state.notes.drafts?.[facility.id]}
                isChosen={source === null && facility.id === facilityId}
                choose={() => choose(facility.id)}
              />
            </li>
          ))}
        </ul>
        <FileTrigger onSelect={(files) => files?.[0] && keep(() => session.facilities.bringIn(files[0]!))}>
          <Button className="button">Bring one in from a file…</Button>
        </FileTrigger>
        <Button className="button" onPress={() => takeOver(NEW_FACILITY)}>
          Enter a new one
        </Button>
        <Button className="button" onPress={() => setSource('records')}>
          From official records…
        </Button>
        <Button className="button" onPress={() => setSource('runways')}>
          From a table of runways…
        </Button>
      </section>
      {source !== null ? (
        <SourceView key={source} source={source} state={state} session={session} take={takeOver} />
      ) : chosen ? (
        <FacilityEditor
          key={chosen.id}
          facility={chosen}
          draft={state.notes.drafts?.[chosen.id]}
          session={session}
          add={add}
        />
      ) : (
        <p className="empty">Choose a facility to see what follows from it, or enter a new one.</p>
      )}
    </div>
  );
}

/** From a landing, and not confirmed yet. */
function isDraft(text: string): boolean {
  const read = draftOf(text);
  return read.ok && unconfirmedIn(read.root).length > 0;
}

interface ListedProps {
  readonly facility: FacilityEntry;
  readonly draft: string | undefined;
  readonly isChosen: boolean;
  readonly choose: () => void;
}

function Listed({ facility, draft, isChosen, choose }: ListedProps) {
  const { text, mark, reading } = facility;
  const marks = [
    ...(mark === null ? [] : [mark]),
    ...(reading?.refusal ? ['not complete yet'] : []),
    ...(isDraft(draft ?? text) ? ['a draft'] : []),
    ...(draft === undefined ? [] : ['changed, not kept']),
  ];
  return (
    <>
      <Button className="place" {...current(isChosen)} onPress={choose}>
        {nameIn(draft ?? text) || 'Without a name'}
      </Button>
      {marks.length > 0 ? <span className="aside"> {marks.join(', ')}</span> : null}
    </>
  );
}
