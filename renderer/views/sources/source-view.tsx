import { useState } from 'react';
import type { AppState } from '../../state/app-state.ts';
import type { Session } from '../../state/session.ts';
import type { Draft } from '../../worker/sources-protocol.ts';
import { DraftPanel } from './draft-panel.tsx';
import { RecordsPanel } from './records-panel.tsx';
import { RunwaysPanel } from './runways-panel.tsx';

export type SourceKind = 'records' | 'runways';

interface Props {
  readonly source: SourceKind;
  readonly state: AppState;
  readonly session: Session;
  /** Keeps a text as a new facility. */
  readonly take: (text: string) => void;
}

/** A facility out of another source than the user's hand: it is looked for, looked at, and taken over. */
export function SourceView({ source, state, session, take }: Props) {
  const [draft, show] = useState<Draft | null>(null);
  const Panel = source === 'records' ? RecordsPanel : RunwaysPanel;
  return (
    <div className="other-sources">
      <Panel session={session} show={show} />
      {draft ? (
        <DraftPanel
          key={draft.text}
          draft={draft}
          own={state.facilities.filter(({ isFixed }) => !isFixed)}
          session={session}
          take={take}
        />
      ) : null}
    </div>
  );
}
