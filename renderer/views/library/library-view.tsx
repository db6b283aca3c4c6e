import { useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Overview } from '../../../electron/bridge/library-calls.ts';
import type { AppState } from '../../state/app-state.ts';
import type { Session } from '../../state/session.ts';
import { BareLogs } from './bare-logs.tsx';
import { BringIn } from './bring-in.tsx';
import { Heading } from './heading.tsx';
import { KeptFlights } from './kept-flights.tsx';
import { LastMove } from './last-move.tsx';
import { OtherVersions } from './other-versions.tsx';
import { RestoreBox } from './restore-box.tsx';
import { UnopenedLibrary } from './unopened-library.tsx';
import { WholeLibrary } from './whole-library.tsx';

interface Props {
  readonly state: AppState;
  readonly session: Session;
}

type Panel = 'bring-in' | 'whole' | 'none';

/** All flights that are kept: found, opened, given to somebody; and what is done with the library as a whole. */
export function LibraryView({ state, session }: Props) {
  const { overview } = state.library;
  if (overview === null) return <UnopenedLibrary notices={state.notices} session={session} />;
  return <Opened state={state} overview={overview} session={session} />;
}

interface OpenedProps extends Props {
  readonly overview: Overview;
}

function Opened({ state, overview, session }: OpenedProps) {
  const { bringing } = state.library;
  const [chosen, choose] = useState<Panel | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const isEmpty = overview.approaches === 0 && overview.students.length === 0;
  // Nothing is there yet: what can be done is shown at once, and stays, since below it there is nothing.
  const first = bringing !== null || overview.approaches === 0 ? 'bring-in' : 'none';
  const panel = isEmpty && chosen === 'none' ? first : (chosen ?? first);
  return (
    <div className="library">
      <div className="library-head">
        <Heading place={heading}>Flights</Heading>
        <p className="aside">{holds(overview)}</p>
        <div className="row">
          <Button
            className="button"
            aria-expanded={panel === 'bring-in'}
            onPress={() => choose(panel === 'bring-in' ? 'none' : 'bring-in')}
          >
            Bring in…
          </Button>
          <Button
            className="button"
            aria-expanded={panel === 'whole'}
            onPress={() => choose(panel === 'whole' ? 'none' : 'whole')}
          >
            Back up, export…
          </Button>
        </div>
      </div>
      {overview.isBegun ? null : <RestoreBox session={session} />}
      {panel === 'bring-in' ? <BringIn state={state} overview={overview} session={session} /> : null}
      {panel === 'whole' ? <WholeLibrary overview={overview} session={session} /> : null}
      <LastMove move={overview.lastMove} session={session} />
      <OtherVersions count={overview.ofOtherVersions} session={session} />
      {isEmpty ? null : <KeptFlights state={state} overview={overview} session={session} heading={heading} />}
      <BareLogs changes={state.library.changes} session={session} />
    </div>
  );
}

function holds({ isBegun, approaches, students, folder }: Overview): string {
  if (!isBegun) return 'Nothing is kept yet. What you keep lies on this machine and goes nowhere else.';
  const people = students.length === 1 ? '1 student' : `${students.length} students`;
  const flown = approaches === 1 ? '1 approach' : `${approaches.toLocaleString('en')} approaches`;
  return `${flown} of ${people}, kept in ${folder}`;
}
