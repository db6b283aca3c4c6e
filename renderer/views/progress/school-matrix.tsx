import { Button } from 'react-aria-components';
import type { SchoolCell, SchoolStudent } from '../../../core/progress/school/school.ts';
import type { SchoolMeasure } from '../../../core/progress/school/school-input.ts';
import { dayOf } from '../../../core/progress/sentences.ts';
import { VERDICTS } from '../../../core/report/verdict-words.ts';
import { valueWords } from '../../plots/plot-of.ts';
import { unitWords } from '../../plots/words.ts';
import { WideTable } from '../../tables/wide-table.tsx';

interface Props {
  readonly students: readonly SchoolStudent[];
  readonly measure: SchoolMeasure;
  readonly open: (studentId: string) => void;
}

/** Students by their 1st, 2nd, … lesson: the figures of the chart above. */
export function SchoolMatrix({ students, measure, open }: Props) {
  const lessons = Math.max(0, ...students.flatMap(({ lessons }) => lessons.map(({ ordinal }) => ordinal)));
  const ordinals = Array.from({ length: lessons }, (_, i) => i + 1);
  return (
    <section>
      <h2>{measure.title}, lesson by lesson</h2>
      <p className="aside">
        {unitWords(measure)}. {VERDICTS['not-met'].sign} where an approach of the lesson did not meet it.
      </p>
      <WideTable name={`${measure.title}, lesson by lesson`}>
        <table className="school-matrix">
          <thead>
            <tr>
              <th scope="col">Student</th>
              {ordinals.map((ordinal) => (
                <th key={ordinal} scope="col">
                  <span className="unseen">Lesson </span>
                  {ordinal}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {students.map(({ studentId, name, lessons }) => (
              <tr key={studentId}>
                <th scope="row">
                  <Button className="link" onPress={() => open(studentId)}>
                    {name}
                  </Button>
                </th>
                {ordinals.map((ordinal) => (
                  <Cell
                    key={ordinal}
                    cell={lessons.find((one) => one.ordinal === ordinal)}
                    measure={measure}
                  />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </WideTable>
    </section>
  );
}

function Cell({ cell, measure }: { readonly cell: SchoolCell | undefined; readonly measure: SchoolMeasure }) {
  if (!cell) return <td />;
  const { date, approaches, value, verdicts } = cell;
  const many = approaches === 1 ? '1 approach' : `${approaches} approaches`;
  const behind = `${dayOf(date)}, ${many}`;
  return (
    <td title={behind}>
      {verdicts['not-met'] > 0 ? (
        <>
          <span className="sign" aria-hidden="true">
            {VERDICTS['not-met'].sign}
          </span>
          <span className="unseen">not met </span>
        </>
      ) : null}
      {value === null ? <span className="aside">–</span> : valueWords(value, measure.unit)}
      <span className="unseen">, {behind}</span>
    </td>
  );
}
