import type { ApproachDebrief, DebriefCriterion } from '../../core/debrief/debrief.ts';
import { whole } from '../../core/units/whole.ts';
import { whyWords } from '../../core/report/criterion-lines.ts';
import { sidedInDots } from '../../core/report/sided.ts';
import { VERDICTS } from '../../core/report/verdict-words.ts';

interface Props {
  readonly approach: ApproachDebrief;
  readonly dots: 2 | 5;
}

/** Every tolerance of the standard: what came of it, by how much, and why; what was not assessed stands last. */
export function CriteriaTable({ approach: { criteria, segments }, dots }: Props) {
  const finalUtc = segments.find(({ kind }) => kind === 'final')?.startUtc ?? null;
  const isOpen = ({ verdict }: DebriefCriterion) => verdict === 'not-assessed';
  const rows = [...criteria.filter((one) => !isOpen(one)), ...criteria.filter(isOpen)];
  if (rows.length === 0) return null;
  return (
    <table className="criteria">
      <caption>What was held</caption>
      <thead>
        <tr>
          <th scope="col">Verdict</th>
          <th scope="col">Tolerance</th>
          <th scope="col" className="number">
            Farthest
          </th>
          <th scope="col">Why</th>
          <th scope="col" className="number">
            Points
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map((criterion) => (
          <tr key={criterion.id} className={criterion.verdict}>
            <td className="verdict">
              <span aria-hidden="true">{VERDICTS[criterion.verdict].sign}</span>{' '}
              {VERDICTS[criterion.verdict].word}
            </td>
            <th scope="row">{criterion.title}</th>
            <td className="number">{farthest(criterion, dots)}</td>
            <td>
              {whyWords(criterion, finalUtc)}
              {criterion.allowed
                ? `; with ${criterion.allowed.by} more allowed for ${criterion.allowed.reason}: ${VERDICTS[criterion.allowed.verdict].word}`
                : ''}
            </td>
            <td className="number">
              {criterion.points === null
                ? '–'
                : `${criterion.points.toFixed(1)} of ${criterion.pointsPossible!}`}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function farthest({ id, measured, unit }: DebriefCriterion, dots: 2 | 5): string {
  if (measured === null) return '';
  if (unit === 'full scale')
    return sidedInDots(measured, id.startsWith('glidepath') ? 'glidepath' : 'localizer', dots);
  return `${measured > 0 ? '+' : ''}${whole(measured)} ${unit ?? ''}`.trim();
}
