import { useState } from 'react';
import { Button } from 'react-aria-components';
import { sinceLastSentence } from '../../core/progress/since-last.ts';
import { approachHeading } from '../../core/report/debrief-text.ts';
import { secondsOf } from '../../core/units/utc.ts';
import { Moment } from '../replay/moment.ts';
import { otherSheets } from '../replay/other-sheets.ts';
import { ReplayView } from '../replay/replay-view.tsx';
import type { AppState, Debriefed, Flight } from '../state/app-state.ts';
import { sinceLastOf } from '../state/since-last.ts';
import type { Session } from '../state/session.ts';
import { current } from './current.ts';
import { DebriefView } from './debrief-view.tsx';

export type Shown = 'debrief' | 'replay';

interface Props {
  readonly debriefed: Debriefed;
  readonly flight: Flight;
  readonly state: AppState;
  readonly session: Session;
  readonly shown: Shown;
  readonly show: (shown: Shown) => void;
  /** A newer one is being made. */
  readonly isStale?: boolean;
}

/** What came of a log, one approach at a time: told as a debrief, or gone through on its sheet. */
export function Debriefing({ debriefed, flight, state, session, shown, show, isStale = false }: Props) {
  const { debrief, sheets } = debriefed;
  const [chosen, choose] = useState(0);
  // The cursor of each approach stays where it was, also when a statement made the debrief anew.
  const [moments] = useState(() => new Map<number, Moment>());
  const at = Math.min(chosen, debrief.approaches.length - 1);
  const approach = debrief.approaches[at];
  const sheet = sheets[at];
  const { dots } = state.notes.settings;
  const sinceLast = approach ? sinceLastSentence(sinceLastOf(state, flight), approach) : null;
  const estimate = flight.estimate === 'open' ? null : flight.estimate;
  const told = { ...debriefed, sinceLast, estimate, at, dots, isStale, session, flightId: flight.id };
  if (!approach || !sheet) return <DebriefView {...told} jump={null} />;
  const before = moments.get(at);
  // Another zone or another facility makes another span of it.
  const isWithin = before && before.get() >= sheet.span.startS && before.get() <= sheet.span.endS;
  const moment = isWithin ? before : new Moment(sheet.span.startS);
  moments.set(at, moment);
  const jump = (utc: string) => {
    moment.set(secondsOf(utc));
    show('replay');
  };
  return (
    <>
      <div className="answer-head">
        <nav aria-label="Ways to see it">
          {(['debrief', 'replay'] as const).map((one) => (
            <Button key={one} className="place" {...current(shown === one)} onPress={() => show(one)}>
              {one === 'debrief' ? 'Debrief' : 'Replay'}
            </Button>
          ))}
        </nav>
        {debrief.approaches.length > 1 ? (
          <nav aria-label="Approaches" className="approaches">
            {debrief.approaches.map((one, i) => (
              <Button key={one.index} className="place" {...current(i === at)} onPress={() => choose(i)}>
                {approachHeading(one, debrief.log)}
              </Button>
            ))}
          </nav>
        ) : null}
      </div>
      {shown === 'debrief' ? (
        <DebriefView {...told} jump={jump} />
      ) : (
        <>
          <h1 className="summary">{approach.summary}</h1>
          <ReplayView
            key={`${at} ${sheet.span.startS} ${sheet.span.endS}`}
            sheet={sheet}
            moment={moment}
            dots={dots}
            candidates={otherSheets(state.flights, flight, sheet)}
          />
        </>
      )}
    </>
  );
}
