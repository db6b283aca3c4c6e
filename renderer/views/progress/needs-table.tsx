import { Button } from 'react-aria-components';
import { VERDICTS } from '../../../core/report/verdict-words.ts';
import type { StudentNeeds } from '../../../core/progress/school/needs-by-criterion.ts';
import type { SchoolMeasure } from '../../../core/progress/school/school-input.ts';
import { WideTable } from '../../tables/wide-table.tsx';

interface Props {
  readonly needs: readonly StudentNeeds[];
  readonly measures: readonly SchoolMeasure[];
  readonly open: (studentId: string) => void;
}

/** Students by criteria: what was not met lately. In the order of the names, and of nothing else. */
export function NeedsTable({ needs, measures, open }: Props) {
  const criteria = measures.filter(({ id }) =>
    needs.some((one) => one.criteria.some((told) => told.id === id)),
  );
  if (needs.length === 0) return null;
  return (
    <section>
      <h2>Who needs what</h2>
      <p className="aside">
        Not met, of those decided in each student’s latest three lessons among those let in. Marked where it
        is at least half, of three or more.
      </p>
      <WideTable name="Who needs what">
        <table className="needs">
          <thead>
            <tr>
              <th scope="col">Student</th>
              {criteria.map(({ id, title }) => (
                <th key={id} scope="col">
                  {title}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {needs.map((one) => (
              <tr key={one.studentId}>
                <th scope="row">
                  <Button className="link" onPress={() => open(one.studentId)}>
                    {one.name}
                  </Button>
                </th>
                {criteria.map(({ id }) => (
                  <Need key={id} told={one.criteria.find((told) => told.id === id)} />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </WideTable>
    </section>
  );
}

function Need({ told }: { readonly told: StudentNeeds['criteria'][number] | undefined }) {
  if (!told) return <td className="aside">–</td>;
  const { met, 'not-met': notMet } = told.verdicts;
  const decided = met + notMet;
  if (decided === 0) return <td className="aside">not decided</td>;
  return (
    <td className={told.isFlagged ? 'flagged' : ''}>
      {told.isFlagged ? <span aria-hidden="true">{VERDICTS['not-met'].sign} </span> : null}
      {notMet} of {decided}
      {told.isFlagged ? <span className="unseen"> to practise</span> : null}
    </td>
  );
}
