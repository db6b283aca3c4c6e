import type { ApproachDebrief, DebriefFinding } from '../../core/debrief/debrief.ts';
import {
  clockOf,
  furtherSentence,
  mainFindings,
  remarkSentences,
  saidText,
} from '../../core/report/finding-lines.ts';

/** What an instructor would say, each with its moment: what to work on, and what was good. */
export function FindingsSection({ approach }: { readonly approach: ApproachDebrief }) {
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
      {praise.length === 0 ? null : (
        <>
          <h3>Good</h3>
          <ul className="findings">
            {praise.map((finding) => (
              <Finding key={finding.id} finding={finding} />
            ))}
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
