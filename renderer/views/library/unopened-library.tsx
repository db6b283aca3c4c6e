import { useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { call, HostProblem } from '../../state/host.ts';
import type { Session } from '../../state/session.ts';
import { Heading } from './heading.tsx';
import { RestoreBox } from './restore-box.tsx';

interface Props {
  readonly notices: readonly string[];
  readonly session: Session;
}

/** Until it is known what the library holds; where it cannot be read, why, and what can be done about it. */
export function UnopenedLibrary({ notices, session }: Props) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [why, setWhy] = useState<string | null>(null);
  const [tries, setTries] = useState(0);
  useEffect(() => {
    // The page asked when it was loaded: what was refused then may work now.
    call('library', {}).then(
      () => session.library.fetch(),
      (error: unknown) => {
        setWhy(error instanceof HostProblem ? error.message : 'The library could not be read.');
      },
    );
  }, [session, tries]);
  // The view says it: above it, it would be said twice, and stay when it is true no more.
  const told = why === null ? -1 : notices.indexOf(why);
  useEffect(() => {
    if (told !== -1) session.store.dispatch({ do: 'put-away', index: told });
  }, [session, told]);
  if (why === null) return <p role="status">Opening the library …</p>;
  return (
    <div className="library">
      <Heading place={heading}>The library could not be opened</Heading>
      <p role="alert">{why}</p>
      <Button
        className="button primary"
        onPress={() => {
          setWhy(null);
          setTries(tries + 1);
        }}
      >
        Try again
      </Button>
      <RestoreBox session={session} />
    </div>
  );
}
