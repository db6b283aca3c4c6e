import type { ApproachDebrief, DebriefCriterion } from '../../core/debrief/debrief.ts';
import { allowedWords, whyWords } from '../../core/report/criterion-lines.ts';
import { measuredWords } from '../../core/report/measured-words.ts';
import { VERDICTS } from '../../core/report/verdict-words.ts';
import type { Dots } from '../../core/sheet/sheet.ts';

interface Props {
  readonly approach: ApproachDebrief;
  readonly dots: Dots;
  /** Goes to a moment in the replay; nothing can be pressed without. */
  readonly jump?: (utc: string) => void;
}

/** Every tolerance of the standard: what came of it, by how much, and why; what was not assessed stands last. */
export function CriteriaTable({ approach, dots, jump }: Props) {
  const { criteria } = approach;
  const isOpen = ({ verdict }: DebriefCriterion) => verdict === 'not-assessed';
  const rows = [...criteria.filter((one) => !isOpen(one)), ...criteria.filter(isOpen)];
  if (rows.length === 0) return null;
  return (
    <table className="criteria">
      <caption>What was asked, and what came of it</caption>
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
            <td className="number">
              <Farthest criterion={criterion} dots={dots} jump={jump} />
            </td>
            <td>
              {whyWords(criterion, approach)}
              {criterion.allowed ? `; ${allowedWords(criterion)}` : ''}
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

/** How far off it was at most; pressed, it goes to the worst moment outside. */
function Farthest({
  criterion,
  dots,
  jump,
}: {
  criterion: DebriefCriterion;
  dots: Dots;
  jump: Props['jump'] | undefined;
}) {
  const words =
    criterion.measured === null ? '' : measuredWords(criterion.id, criterion.unit, criterion.measured, dots);
  const worst = criterion.excursions.toSorted((a, b) => Math.abs(b.peak) - Math.abs(a.peak))[0];
  if (!jump || !worst) return words;
  return (
    <button
      type="button"
      className="jump"
      aria-label={`${words}: show it in the replay`}
      onClick={() => jump(worst.peakUtc)}
    >
      {words}
    </button>
  );
}
