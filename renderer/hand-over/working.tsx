import type { ApproachDebrief } from '../../core/debrief/debrief.ts';
import { gradeHeadline } from '../../core/report/grade-lines.ts';
import { PLACE_CAUTIONS } from '../../core/report/place-cautions.ts';

/** Level and score in small type within their working, or why there is neither. */
export function Working({ approach }: { readonly approach: ApproachDebrief }) {
  const { grade } = approach;
  if (grade === null) return <p className="working">{gradeHeadline(approach)}</p>;
  return (
    <div className="working">
      <h3>How it was worked out</h3>
      <p>{PLACE_CAUTIONS.level}</p>
      <ul>
        {grade.working.map((step, i) => (
          <li key={`${i} ${step}`}>{step}</li>
        ))}
        <li>{gradeHeadline(approach)}.</li>
      </ul>
    </div>
  );
}
