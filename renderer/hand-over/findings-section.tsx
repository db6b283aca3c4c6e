import type { ApproachDebrief, DebriefFinding } from '../../core/debrief/debrief.ts';
import {
  BETTER_THAN_LAST,
  clockOf,
  furtherSentence,
  mainFindings,
  remarkSentences,
  saidText,
} from '../../core/report/finding-lines.ts';

interface Props {
  readonly approach: ApproachDebrief;
  /** What was better than the time before; null where that is not known. */
  readonly sinceLast: string | null;
}

/** What an instructor would say, each with its moment: what to work on, and what was good. */
export function FindingsSection({ approach, sinceLast }: Props) {
  const [faults, praise] = [mainFindings(approach, 'fault'), mainFindings(approach, 'praise')];
  const further = furtherSentence(approach);
  return (
    <>
      {faults.length === 0 ? null : (
        <>
          <h3>To work on</h3>
          <ol className="findings">
            {faults.map((finding) => (
              <Finding key={finding.id} finding={finding} />
            ))}
          </ol>
        </>
      )}
      {praise.length === 0 && sinceLast === null ? null : (
        <>
          <h3>Good</h3>
          <ul className="findings">
            {praise.map((finding) => (
              <Finding key={finding.id} finding={finding} />
            ))}
            {sinceLast === null ? null : (
              <li>
                <strong>{BETTER_THAN_LAST}.</strong> {sinceLast}
              </li>
            )}
          </ul>
        </>
      )}
      {further === null ? null : <p className="aside">{further}</p>}
    </>
  );
}

function Finding({ finding }: { readonly finding: DebriefFinding }) {
  const { title, practise, fromUtc } = finding;
  return (
    <li>
      <strong>
        {clockOf(fromUtc)} {title}.
      </strong>{' '}
      {saidText(finding)}
      {practise === null ? null : <span className="aside"> Practise: {practise}</span>}
      {remarkSentences(finding).map((sentence) => (
        <span key={sentence} className="aside">
          {' '}
          {sentence}
        </span>
      ))}
    </li>
  );
}
