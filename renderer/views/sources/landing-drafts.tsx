import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Session } from '../../state/session.ts';
import type { Draft } from '../../worker/sources-protocol.ts';
import { DraftPanel } from './draft-panel.tsx';

interface Props {
  readonly flightId: string;
  readonly session: Session;
}

/** Drafts of the runways that a log landed on, each to be taken over and confirmed. */
export function LandingDrafts({ flightId, session }: Props) {
  const [drafts, setDrafts] = useState<readonly Draft[] | null>(null);
  const draft = async () => setDrafts(await session.sources.ask('landingDrafts', { log: flightId }));
  return (
    <div className="other-sources">
      <Button className="button" onPress={() => void draft()}>
        Draft one from its landing
      </Button>
      {(drafts ?? []).map((one) => (
        <DraftPanel
          key={one.text}
          draft={one}
          own={[]}
          session={session}
          take={(text) => void session.sources.takeOver(text)}
        />
      ))}
    </div>
  );
}
