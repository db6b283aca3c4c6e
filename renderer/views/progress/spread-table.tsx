import type { LessonSpread } from '../../../core/progress/school/school.ts';
import type { SchoolMeasure } from '../../../core/progress/school/school-input.ts';
import { valueWords } from '../../plots/plot-of.ts';
import { WideTable } from '../../tables/wide-table.tsx';

interface Props {
  readonly measure: SchoolMeasure;
  readonly distribution: readonly LessonSpread[];
}

/** The figures behind the chart, for those who cannot see it or want to read them off. */
export function SpreadTable({ measure: { title, unit }, distribution }: Props) {
  return (
    <details>
      <summary>The figures of the chart</summary>
      <WideTable name={`${title}, figures over the lessons`}>
        <table className="spread">
          <thead>
            <tr>
              <th scope="col">Lesson</th>
              <th scope="col">Students</th>
              <th scope="col">Least</th>
              <th scope="col">Lower quartile</th>
              <th scope="col">Middle</th>
              <th scope="col">Upper quartile</th>
              <th scope="col">Largest</th>
            </tr>
          </thead>
          <tbody>
            {distribution.map(
              ({ ordinal, students, least, lowerQuartile, median, upperQuartile, largest }) => (
                <tr key={ordinal}>
                  <th scope="row">{ordinal}</th>
                  <td>{students}</td>
                  <td>{valueWords(least, unit)}</td>
                  <td>{valueWords(lowerQuartile, unit)}</td>
                  <td>{valueWords(median, unit)}</td>
                  <td>{valueWords(upperQuartile, unit)}</td>
                  <td>{valueWords(largest, unit)}</td>
                </tr>
              ),
            )}
          </tbody>
        </table>
      </WideTable>
    </details>
  );
}
