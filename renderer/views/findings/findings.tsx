import { useState, type ReactNode } from 'react';
import type { ApproachDebrief, DebriefFinding } from '../../../core/debrief/debrief.ts';
import { BETTER_THAN_LAST, isDismissed, mainFindings } from '../../../core/report/finding-lines.ts';
import { PLACE_CAUTIONS } from '../../../core/report/place-cautions.ts';
import { withRemark } from '../../state/remarks.ts';
import type { Session } from '../../state/session.ts';
import { FindingItem } from './finding-item.tsx';

interface Props {
  readonly approach: ApproachDebrief;
  /** What was better than the time before; null where that is not known. */
  readonly sinceLast: string | null;
  readonly flightId: string;
  readonly session: Session;
  /** Goes to a moment in the replay. */
  readonly jump: (utc: string) => void;
}

/**
 * What an instructor would say: the main faults, what was good, and the rest folded away. The instructor lets each
 * stand, says it in other words or takes it off; the student may answer.
 */
export function Findings({ approach, sinceLast, flightId, session, jump }: Props) {
  const { findings, startUtc } = approach;
  if (findings.length === 0 && sinceLast === null) return null;
  const [faults, praise] = [mainFindings(approach, 'fault'), mainFindings(approach, 'praise')];
  const shown = new Set([...faults, ...praise]);
  const dismissed = findings.filter(isDismissed);
  const further = findings.filter((finding) => !shown.has(finding) && !isDismissed(finding));
  const pathOf = ({ id }: DebriefFinding) => `${flightId}/${startUtc}/${id}`;
  const isWrittenTo = (finding: DebriefFinding) => session.store.unsaid.at(pathOf(finding)) !== null;
  const item = (finding: DebriefFinding) => (
    <FindingItem
      key={finding.id}
      finding={finding}
      jump={jump}
      session={session}
      path={pathOf(finding)}
      say={(change) => {
        const flight = session.store.state().flights.find(({ id }) => id === flightId);
        const about = { approachUtc: startUtc, finding: finding.id };
        if (flight)
          void session.state(flightId, { remarks: withRemark(flight.stated.remarks, about, change) });
      }}
    />
  );
  return (
    <section className="findings" aria-label="What to say">
      {faults.length === 0 ? null : (
        <>
          <h2>To work on</h2>
          <ol>{faults.map(item)}</ol>
        </>
      )}
      {praise.length === 0 && sinceLast === null ? null : (
        <>
          <h2>Good</h2>
          <ul className="plain">
            {praise.map(item)}
            {sinceLast === null ? null : (
              <li className="finding">
                <strong>{BETTER_THAN_LAST}.</strong> {sinceLast}
              </li>
            )}
          </ul>
        </>
      )}
      {approach.outcome === 'missed-approach' ? <p className="aside">{PLACE_CAUTIONS.goingAround}</p> : null}
      <Folded words="More of it" findings={further} item={item} isOpenAtFirst={further.some(isWrittenTo)} />
      <Folded words="Taken off" findings={dismissed} item={item} isOpenAtFirst={false} />
    </section>
  );
}

interface FoldedProps {
  readonly words: string;
  readonly findings: readonly DebriefFinding[];
  readonly item: (finding: DebriefFinding) => ReactNode;
  readonly isOpenAtFirst: boolean;
}

function Folded({ words, findings, item, isOpenAtFirst }: FoldedProps) {
  // Afterwards it is the reader who folds it.
  const [isOpen] = useState(isOpenAtFirst);
  if (findings.length === 0) return null;
  return (
    <details open={isOpen}>
      <summary>
        {words} ({findings.length})
      </summary>
      <ul className="plain">{findings.map(item)}</ul>
    </details>
  );
}
