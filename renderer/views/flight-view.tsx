import { useState } from 'react';
import { Button } from 'react-aria-components';
import { lastDebriefed, lastRead, type AppState, type Flight } from '../state/app-state.ts';
import type { Session } from '../state/session.ts';
import { Debriefing, type Shown } from './debriefing.tsx';
import { EstimateForm } from './estimate-form.tsx';
import { Failed } from './failed.tsx';
import { LastTime } from './last-time.tsx';
import { NameColumns } from './name-columns.tsx';
import { RecognisedView } from './recognised-view.tsx';
import { LandingDrafts } from './sources/landing-drafts.tsx';
import { StatementForm } from './statement-form.tsx';
import { Working } from './working.tsx';

interface Props {
  readonly flight: Flight;
  readonly state: AppState;
  readonly session: Session;
}

/** One open log: what it is judged by, what came of it, and what was recognised in it. */
export function FlightView(props: Props) {
  const { flight, session } = props;
  const { reading } = flight;
  const [shown, show] = useState<Shown>('debrief');
  if (reading.kind === 'failed')
    return (
      <Failed what="This file cannot be read as a track log" issue={reading.issue}>
        <NameColumns key={reading.issue.code} flight={flight} session={session} issue={reading.issue} />
        <LastTime flight={flight} session={session} />
        <Button className="button" onPress={() => session.close(flight.id)}>
          Close it
        </Button>
      </Failed>
    );
  const inspection = lastRead(reading);
  const isReading = reading.kind === 'reading';
  const working = isReading ? (
    <Working words={`Reading ${flight.name}`} share={reading.share} stop={() => session.cancel(flight.id)} />
  ) : null;
  if (inspection === null) return working;
  return (
    <div className={shown === 'replay' ? 'flight wide' : 'flight'}>
      <aside className="side" aria-label="What it is judged by">
        {/* Its fields hold what was typed: another set of statements needs other fields. */}
        <StatementForm key={String(flight.lastTime?.isTaken)} {...props} inspection={inspection} />
      </aside>
      <div className="answer">
        <LastTime flight={flight} session={session} />
        <Answer {...props} shown={shown} show={show} isStale={isReading} />
        {flight.notCopied === null ? null : <p className="aside">{flight.notCopied}</p>}
        <RecognisedView flight={flight} session={session} inspection={inspection} />
        {working}
      </div>
    </div>
  );
}

interface AnswerProps extends Props {
  readonly shown: Shown;
  readonly show: (shown: Shown) => void;
  /** The log is being read anew. */
  readonly isStale: boolean;
}

function Answer({ flight, state, session, shown, show, isStale }: AnswerProps) {
  const { judged, facilityId, fits } = flight;
  if (fits === null)
    return <Working words="Looking which facility it was flown to" share={null} stop={null} />;
  if (facilityId === null)
    return (
      <section className="empty">
        <h1>Which facility?</h1>
        <p>
          This log was flown to none of the facilities that Halfdot knows. Choose one on the left, or make one
          under Facilities: from official records, from a table of runways, or from the chart.
        </p>
        <Button className="button" onPress={() => session.store.dispatch({ do: 'show', view: 'facilities' })}>
          Facilities
        </Button>
        <p>
          Where it landed, a draft of the runway can be made of the landing. It has to be confirmed against
          the chart, and never grades this log: other flights to that runway are what it is for.
        </p>
        <LandingDrafts flightId={flight.id} session={session} />
      </section>
    );
  if (judged.kind === 'failed') return <Failed what="No debrief could be made" issue={judged.issue} />;
  const last = lastDebriefed(judged);
  if (last && flight.estimate === 'open')
    return (
      <EstimateForm
        flightId={flight.id}
        session={session}
        give={(estimate) => session.store.dispatch({ do: 'change', id: flight.id, change: { estimate } })}
      />
    );
  const seen = { flight, state, session, shown, show };
  if (last) return <Debriefing debriefed={last} {...seen} isStale={isStale || judged.kind === 'working'} />;
  const share = judged.kind === 'working' ? judged.share : null;
  return <Working words="Judging" share={share} stop={() => session.cancel(flight.id)} />;
}
