import { useRef } from 'react';
import { Button } from 'react-aria-components';
import type { AppState } from '../../state/app-state.ts';
import type { Session } from '../../state/session.ts';
import { Heading } from '../library/heading.tsx';
import { UnopenedLibrary } from '../library/unopened-library.tsx';

interface Props {
  readonly state: AppState;
  readonly session: Session;
}

/** All students of the library, and the way to the record of each. */
export function ProgressView({ state, session }: Props) {
  const heading = useRef<HTMLHeadingElement>(null);
  const { overview } = state.library;
  if (overview === null) return <UnopenedLibrary notices={state.notices} session={session} />;
  const open = (studentId: string) => session.store.dispatch({ do: 'student', studentId });
  return (
    <div className="progress">
      <Heading place={heading}>Progress</Heading>
      <ul className="plain">
        {overview.students.map(({ id, name, approaches }) => (
          <li key={id}>
            <Button className="link" onPress={() => open(id)}>
              {name}
            </Button>{' '}
            <span className="aside">{approaches} approaches</span>
          </li>
        ))}
      </ul>
    </div>
  );
}
