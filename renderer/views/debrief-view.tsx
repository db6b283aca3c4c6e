import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { ApproachDebrief, Debrief } from '../../core/debrief/debrief.ts';
import { positionSentence } from '../../core/report/position-line.ts';
import type { Debriefed } from '../state/app-state.ts';
import { CriteriaTable } from './criteria-table.tsx';
import { EventTable } from './event-table.tsx';
import { StabilityTable } from './stability-table.tsx';

interface Props extends Debriefed {
  readonly dots: 2 | 5;
  /** A newer one is being made. */
  readonly isStale?: boolean;
}

/** The debrief of a log: one approach at a time, first a sentence, then what it stands on. */
export function DebriefView({ debrief, page, dots, isStale = false }: Props) {
  const { approaches } = debrief;
  const [chosen, choose] = useState(0);
  const approach = approaches[Math.min(chosen, approaches.length - 1)];
  return (
    <article className="debrief" aria-busy={isStale}>
      {approaches.length > 1 ? (
        <nav aria-label="Approaches" className="approaches">
          {approaches.map(({ index, startUtc }, i) => (
            <Button
              key={index}
              className="place"
              {...(i === chosen ? { 'aria-current': 'page' as const } : {})}
              onPress={() => choose(i)}
            >
              {`Approach ${index}, ${clock(startUtc)}`}
            </Button>
          ))}
        </nav>
      ) : null}
      {approach ? (
        <Approach approach={approach} debrief={debrief} dots={dots} />
      ) : (
        <NoApproach debrief={debrief} />
      )}
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
      <CriteriaTable criteria={approach.criteria} dots={dots} />
      <StabilityTable gates={approach.stability} />
      <EventTable approach={approach} log={debrief.log} dots={dots} />
      <Grade approach={approach} />
    </>
  );
}

/** Level and score in small type, with their working. */
function Grade({ approach: { grade, notGradedBecause } }: { approach: ApproachDebrief }) {
  if (grade === null) return <p className="grade">{sentence(notGradedBecause ?? 'not graded')}</p>;
  const { levelLow, levelHigh, scoreLow, scoreHigh, words, working } = grade;
  const range = (low: number, high: number) => (low === high ? `${low}` : `${low} to ${high}`);
  return (
    <details className="grade">
      <summary>
        Level {range(levelLow, levelHigh)} of 5, {words}; score {range(scoreLow, scoreHigh)} of 100
      </summary>
      <p>
        How one recorded path compares; this program’s own, no authority’s. Not a sign-off and not a minimum.
      </p>
      <ul>
        {working.map((step, i) => (
          <li key={`${i} ${step}`}>{step}</li>
        ))}
      </ul>
    </details>
  );
}

function Sources({ debrief, page }: { debrief: Debrief; page: string }) {
  const { log, facility, standard } = debrief;
  const toCheck = [...facility.issues, ...log.issues].filter(({ severity }) => severity !== 'note');
  return (
    <section className="sources">
      <p>
        From {log.file} at {facility.name}
        {debrief.approaches.length > 0 ? `, judged by ${standard.source}` : ''}. {positionSentence(debrief)}
      </p>
      {toCheck.map(({ message, tip }) => (
        <p key={message}>
          To be checked: {message} {tip}
        </p>
      ))}
      <details>
        <summary>All of it as a page</summary>
        <pre className="page">{page}</pre>
      </details>
    </section>
  );
}

function sentence(clause: string): string {
  const text = `${clause[0]!.toUpperCase()}${clause.slice(1)}`;
  return text.endsWith('.') ? text : `${text}.`;
}

function clock(utc: string): string {
  return utc.slice(11, 19);
}
