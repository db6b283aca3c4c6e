import { Button } from 'react-aria-components';
import type { AppState, Flight } from '../state/app-state.ts';
import type { Session } from '../state/session.ts';
import { DebriefView } from './debrief-view.tsx';
import { RecognisedView } from './recognised-view.tsx';
import { StatementForm } from './statement-form.tsx';

interface Props {
  readonly flight: Flight;
  readonly state: AppState;
  readonly session: Session;
}

/** One open log: what it is judged by, what came of it, and what was recognised in it. */
export function FlightView(props: Props) {
  const { flight, session } = props;
  const { reading } = flight;
  if (reading.kind === 'reading')
    return (
      <Working
        words={`Reading ${flight.name}`}
        share={reading.share}
        stop={() => session.cancel(flight.id)}
      />
    );
  if (reading.kind === 'failed')
    return (
      <section className="failed" role="alert">
        <h1>This file cannot be read as a track log</h1>
        <p>{reading.issue.message}</p>
        {reading.issue.tip ? <p>{reading.issue.tip}</p> : null}
        <Button className="button" onPress={() => session.close(flight.id)}>
          Close it
        </Button>
      </section>
    );
  return (
    <div className="flight">
      <aside className="side" aria-label="What it is judged by">
        <StatementForm {...props} />
      </aside>
      <div className="answer">
        <Answer {...props} />
        <RecognisedView flight={flight} session={session} inspection={reading.inspection} />
      </div>
    </div>
  );
}

function Answer({ flight, state, session }: Props) {
  const { judged, facilityId, fits } = flight;
  if (fits === null)
    return <Working words="Looking which facility it was flown to" share={null} stop={null} />;
  if (facilityId === null)
    return (
      <section className="empty">
        <h1>Which facility?</h1>
        <p>
          This log was flown to none of the facilities that Halfdot knows. Choose one on the left, or enter it
          under Facilities.
        </p>
        <Button className="button" onPress={() => session.store.dispatch({ do: 'show', view: 'facilities' })}>
          Facilities
        </Button>
      </section>
    );
  if (judged.kind === 'failed')
    return (
      <section className="failed" role="alert">
        <h1>No debrief could be made</h1>
        <p>{judged.issue.message}</p>
        {judged.issue.tip ? <p>{judged.issue.tip}</p> : null}
      </section>
    );
  const around = { dots: state.notes.settings.dots, flightId: flight.id, session };
  if (judged.kind === 'done') return <DebriefView {...judged.debriefed} {...around} />;
  if (judged.kind === 'working' && judged.last) return <DebriefView {...judged.last} {...around} isStale />;
  const share = judged.kind === 'working' ? judged.share : null;
  return <Working words="Judging" share={share} stop={() => session.cancel(flight.id)} />;
}

/** Something under way: how far it is, and a way to stop it. */
function Working({ words, share, stop }: { words: string; share: number | null; stop: (() => void) | null }) {
  return (
    <section className="working" aria-live="polite">
      <p>
        {words}
        {share === null ? ' …' : `, ${Math.round(share * 100)} %`}
      </p>
      <progress aria-label={words} {...(share === null ? {} : { value: share })} max={1} />
      {stop ? (
        <Button className="button" onPress={stop}>
          Stop
        </Button>
      ) : null}
    </section>
  );
}
