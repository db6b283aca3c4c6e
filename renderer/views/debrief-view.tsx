import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { ApproachDebrief, Debrief } from '../../core/debrief/debrief.ts';
import { approachHeading, sentencesToCheck, sourceSentence } from '../../core/report/debrief-text.ts';
import { gradeHeadline } from '../../core/report/grade-lines.ts';
import { PLACE_CAUTIONS } from '../../core/report/place-cautions.ts';
import { positionSentence } from '../../core/report/position-line.ts';
import type { Debriefed } from '../state/app-state.ts';
import type { Session } from '../state/session.ts';
import { CriteriaTable } from '../tables/criteria-table.tsx';
import { EventTable } from '../tables/event-table.tsx';
import { StabilityTable } from '../tables/stability-table.tsx';
import { HandOverButtons } from './hand-over-buttons.tsx';

interface Props extends Debriefed {
  readonly flightId: string;
  readonly session: Session;
  readonly dots: 2 | 5;
  /** A newer one is being made. */
  readonly isStale?: boolean;
}

/** The debrief of a log: one approach at a time, first a sentence, then what it stands on. */
export function DebriefView({ debrief, page, dots, flightId, session, isStale = false }: Props) {
  const { approaches } = debrief;
  const [chosen, choose] = useState(0);
  const approach = approaches[Math.min(chosen, approaches.length - 1)];
  return (
    <article className="debrief" aria-busy={isStale}>
      {approaches.length > 1 ? (
        <nav aria-label="Approaches" className="approaches">
          {approaches.map((one, i) => (
            <Button
              key={one.index}
              className="place"
              {...(i === chosen ? { 'aria-current': 'page' as const } : {})}
              onPress={() => choose(i)}
            >
              {approachHeading(one, debrief.log)}
            </Button>
          ))}
        </nav>
      ) : null}
      {approach ? (
        <Approach approach={approach} debrief={debrief} dots={dots} />
      ) : (
        <NoApproach debrief={debrief} />
      )}
      <HandOverButtons session={session} flightId={flightId} approach={approach?.index ?? null} />
      <Sources debrief={debrief} page={page} />
    </article>
  );
}

function NoApproach({ debrief }: { debrief: Debrief }) {
  return (
    <section>
      <h1>No approach was found</h1>
      {debrief.issues.map(({ message, tip }) => (
        <p key={message}>
          {message} {tip}
        </p>
      ))}
    </section>
  );
}

function Approach({ approach, debrief, dots }: { approach: ApproachDebrief; debrief: Debrief; dots: 2 | 5 }) {
  return (
    <>
      <h1 className="summary">{approach.summary}</h1>
      {approach.issues.map(({ message, tip }) => (
        <p key={message} className="notice">
          <strong>Check the facility first.</strong> {message} {tip}
        </p>
      ))}
      <CriteriaTable approach={approach} dots={dots} />
      <StabilityTable gates={approach.stability} />
      <EventTable approach={approach} log={debrief.log} dots={dots} />
      <Grade approach={approach} />
    </>
  );
}

/** Level and score in small type, with their working. */
function Grade({ approach }: { approach: ApproachDebrief }) {
  const headline = gradeHeadline(approach);
  if (approach.grade === null) return <p className="grade">{headline}</p>;
  return (
    <details className="grade">
      <summary>{headline}</summary>
      <p>{PLACE_CAUTIONS.level}</p>
      <ul>
        {approach.grade.working.map((step, i) => (
          <li key={`${i} ${step}`}>{step}</li>
        ))}
      </ul>
    </details>
  );
}

function Sources({ debrief, page }: { debrief: Debrief; page: string }) {
  return (
    <section className="sources">
      <p>
        {sourceSentence(debrief)} {positionSentence(debrief)}
      </p>
      {sentencesToCheck(debrief).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <details>
        <summary>All of it as a page</summary>
        <pre className="page">{page}</pre>
      </details>
    </section>
  );
}
