import type { ApproachDebrief, Debrief } from '../../core/debrief/debrief.ts';
import { sentencesToCheck, sourceSentence } from '../../core/report/debrief-text.ts';
import { gradeHeadline } from '../../core/report/grade-lines.ts';
import { PLACE_CAUTIONS } from '../../core/report/place-cautions.ts';
import { positionSentence } from '../../core/report/position-line.ts';
import type { Dots, Sheet } from '../../core/sheet/sheet.ts';
import { statedSentence } from '../../core/report/stated-lines.ts';
import type { Debriefed, OwnEstimate } from '../state/app-state.ts';
import type { Session } from '../state/session.ts';
import { CriteriaTable } from '../tables/criteria-table.tsx';
import { EventTable } from '../tables/event-table.tsx';
import { SafetyNotice } from '../tables/safety-notice.tsx';
import { StabilityTable } from '../tables/stability-table.tsx';
import { WideTable } from '../tables/wide-table.tsx';
import { Findings } from './findings/findings.tsx';
import { KeepPanel } from './keep-panel.tsx';
import { HandOverButtons } from './hand-over-buttons.tsx';
import { SheetPreview } from './sheet-preview.tsx';

interface Props extends Debriefed {
  readonly flightId: string;
  readonly session: Session;
  /** Place of the approach that is shown. */
  readonly at: number;
  readonly dots: Dots;
  /** What was better than the time before; null where that is not known. */
  readonly sinceLast: string | null;
  /** What the student thought of it before; null where nobody was asked. */
  readonly estimate: OwnEstimate | null;
  /** A newer one is being made. */
  readonly isStale: boolean;
  /** Goes to a moment in the replay; null where there is none. */
  readonly jump: ((utc: string) => void) | null;
}

/** The debrief of one approach: first a sentence, then what it stands on. */
export function DebriefView(props: Props) {
  const { debrief, page, sheets, at, dots, isStale, jump, sinceLast, estimate, flightId, session } = props;
  const approach = debrief.approaches[at];
  const sheet = sheets[at];
  return (
    <article className="debrief" aria-busy={isStale}>
      {approach && sheet && jump ? (
        <Approach
          approach={approach}
          sheet={sheet}
          debrief={debrief}
          sinceLast={sinceLast}
          estimate={estimate}
          dots={dots}
          jump={jump}
          flightId={flightId}
          session={session}
        />
      ) : (
        <NoApproach debrief={debrief} />
      )}
      <KeepPanel session={session} flightId={flightId} />
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

interface ApproachProps {
  readonly approach: ApproachDebrief;
  readonly sheet: Sheet;
  readonly debrief: Debrief;
  readonly sinceLast: string | null;
  readonly estimate: OwnEstimate | null;
  readonly dots: Dots;
  readonly jump: (utc: string) => void;
  readonly flightId: string;
  readonly session: Session;
}

function Approach(props: ApproachProps) {
  const { approach, sheet, debrief, sinceLast, estimate, dots, jump, flightId, session } = props;
  return (
    <>
      <h1 className="summary">{approach.summary}</h1>
      <SafetyNotice approach={approach} />
      {approach.issues.map(({ message, tip }) => (
        <p key={message} className="notice">
          <strong>Check the facility first.</strong> {message} {tip}
        </p>
      ))}
      <StatedLine approach={approach} />
      <Estimate estimate={estimate} />
      <Findings approach={approach} sinceLast={sinceLast} flightId={flightId} session={session} jump={jump} />
      <WideTable name="What was asked, and what came of it">
        <CriteriaTable approach={approach} dots={dots} jump={jump} />
      </WideTable>
      <SheetPreview sheet={sheet} dots={dots} jump={jump} />
      <StabilityTable gates={approach.stability} />
      <WideTable name="What happened">
        <EventTable approach={approach} log={debrief.log} dots={dots} jump={jump} />
      </WideTable>
      <Grade approach={approach} />
    </>
  );
}

/** Beside what came of it: a student learns from where the two part. */
function Estimate({ estimate }: { readonly estimate: OwnEstimate | null }) {
  if (estimate === null) return null;
  const { level, words } = estimate;
  const said = [...(level === null ? [] : [`level ${level}`]), ...(words === '' ? [] : [`“${words}”`])];
  return <p className="aside">The student’s own estimate before: {said.join(', ')}.</p>;
}

/** What was stated stands by the sentence: who flew, and by how much more room, changes how the answer is read. */
function StatedLine({ approach }: { approach: ApproachDebrief }) {
  const sentence = statedSentence(approach);
  return sentence === null ? null : <p className="aside stated">{sentence}</p>;
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
