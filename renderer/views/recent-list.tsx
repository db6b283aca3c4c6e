import { useRef } from 'react';
import { Button } from 'react-aria-components';
import { LARGEST_KEPT_BYTES } from '../../electron/bridge/kept-limits.ts';
import type { Recent } from '../../electron/bridge/recent.ts';
import type { AppState } from '../state/app-state.ts';
import { openedWords } from '../state/opened-words.ts';
import type { Session } from '../state/session.ts';
import { Asked } from './asked.tsx';

interface Props {
  readonly state: AppState;
  readonly session: Session;
}

/** The logs opened lately: each opens with what was stated about it, and can be taken off the list. */
export function RecentList({ state, session }: Props) {
  const heading = useRef<HTMLHeadingElement>(null);
  const { recents } = state.notes;
  if (recents.length === 0) return null;
  const forget = (recent: Recent | null) => {
    // What had the focus goes away with it.
    heading.current?.focus();
    void session.forget(recent);
  };
  return (
    <section aria-labelledby="recents-heading" className="recents">
      <h2 id="recents-heading" ref={heading} tabIndex={-1}>
        Opened lately
      </h2>
      <ul>
        {recents.map((recent) => (
          <li key={recent.sha256}>
            <Entry recent={recent} state={state} open={() => void session.openRecent(recent)} />
            <Asked
              words="×"
              label={`Take ${recent.name} off the list`}
              question={`Forget ${recent.name}, and what was stated about it? Your own file stays.`}
              yes="Forget it"
              act={() => forget(recent)}
            />
          </li>
        ))}
      </ul>
      <p className="aside">
        {`Halfdot keeps copies of logs up to ${LARGEST_KEPT_BYTES / 1e6} MB on this machine, so that they open without their files.`}
      </p>
      <Asked
        words="Forget all…"
        question="Forget all of them, and what was stated about them? Your own files stay."
        yes="Forget all"
        act={() => forget(null)}
      />
    </section>
  );
}

interface EntryProps {
  readonly recent: Recent;
  readonly state: AppState;
  readonly open: () => void;
}

/** One log: to press where a copy of it is kept, and to read where there is none. */
function Entry({ recent, state, open }: EntryProps) {
  const isThere = state.kept === null || state.kept.includes(recent.sha256);
  const facility = state.facilities.find(({ id }) => id === recent.facilityId)?.reading?.name;
  const opened = recent.openedUtc === undefined ? null : openedWords(recent.openedUtc, new Date());
  const facts = [facility, opened].filter(Boolean).join(' · ');
  const words = (
    <>
      <span className="file">{recent.name}</span>
      {recent.summary ? <span>{recent.summary}</span> : null}
      <span className="aside">{facts}</span>
    </>
  );
  if (isThere)
    return (
      <Button className="sample" onPress={open}>
        {words}
      </Button>
    );
  return (
    <div className="sample gone">
      {words}
      <span className="aside">
        There is no copy of this log here. Open it from Flights, if it is kept there, or the file itself: what
        you stated is taken over, or offered.
      </span>
    </div>
  );
}
