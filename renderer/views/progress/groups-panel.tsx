import {
  CartesianGrid,
  ErrorBar,
  ReferenceLine,
  ResponsiveContainer,
  Scatter,
  ScatterChart,
  XAxis,
  YAxis,
} from 'recharts';
import { scaleLinear } from 'd3-scale';
import type { GroupComparison, SchoolGroup, SchoolGroups } from '../../../core/progress/school/school.ts';
import type { SchoolMeasure } from '../../../core/progress/school/school-input.ts';
import { differenceWords, valueWords } from '../../plots/plot-of.ts';
import { AXIS } from './chart-parts.ts';

interface Props {
  readonly groups: SchoolGroups;
  readonly measure: SchoolMeasure;
}

/** Groups in the order of their labels, each held against all others; nobody is ranked. */
export function GroupsPanel({ groups, measure }: Props) {
  return (
    <section>
      <h2>{measure.title}, groups side by side</h2>
      <GroupsChart groups={groups} measure={measure} />
      <div className="wide-table">
        <table className="groups">
          <thead>
            <tr>
              <th scope="col">Group</th>
              <th scope="col">Students</th>
              <th scope="col">Approaches</th>
              <th scope="col">Mean of its students</th>
              <th scope="col">Adjusted</th>
              <th scope="col">Less the others, adjusted</th>
              <th scope="col">Between, 95 %</th>
              <th scope="col">Does better</th>
              <th scope="col">What can be said</th>
            </tr>
          </thead>
          <tbody>
            {groups.groups.map((group) => (
              <GroupRow key={group.key} group={group} measure={measure} />
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

const STANDINGS = {
  better: 'better than the others',
  worse: 'worse than the others',
  'perhaps-better': 'perhaps better than the others',
  'perhaps-worse': 'perhaps worse than the others',
  'not-sure': 'no sure difference',
} as const;

function GroupRow({
  group,
  measure: { unit },
}: {
  readonly group: SchoolGroup;
  readonly measure: SchoolMeasure;
}) {
  const { label, students, approaches, mean, adjustedMean, comparison, whyNot } = group;
  const value = (known: number | null) => (known === null ? '–' : valueWords(known, unit));
  return (
    <tr>
      <th scope="row">{label}</th>
      <td>{students}</td>
      <td>{approaches}</td>
      <td>{value(mean)}</td>
      <td>{value(adjustedMean)}</td>
      {comparison === null ? (
        <td colSpan={4} className="aside">
          {whyNot}
        </td>
      ) : (
        <>
          <td>{differenceWords(comparison.difference, unit)}</td>
          <td>
            {differenceWords(comparison.interval.low, unit)} and{' '}
            {differenceWords(comparison.interval.high, unit)}
          </td>
          <td>{betterWords(comparison)}</td>
          <td>{STANDINGS[comparison.standing]}</td>
        </>
      )}
    </tr>
  );
}

function betterWords({ how, students, superiority: { chance, ahead } }: GroupComparison): string {
  if (how === 'within-students') return `${ahead} of ${students} students, than they do elsewhere`;
  return `a student of it than one of the others in ${Math.round(chance * 100)} of 100 pairs`;
}

const ROW_HEIGHT = 34;
const AXIS_HEIGHT = 30;

/** The differences with their intervals; the table below has every figure. */
function GroupsChart({ groups: { groups }, measure }: Props) {
  const data = groups.flatMap(({ label, comparison }) =>
    comparison === null
      ? []
      : [
          {
            label,
            difference: comparison.difference,
            reach: [
              comparison.difference - comparison.interval.low,
              comparison.interval.high - comparison.difference,
            ],
          },
        ],
  );
  if (data.length === 0) return null;
  const reach = reachOf(data);
  return (
    <div role="img" aria-label="Differences between the groups, as the table below has them">
      <ResponsiveContainer width="100%" height={data.length * ROW_HEIGHT + AXIS_HEIGHT}>
        <ScatterChart margin={{ top: 4, right: 16, bottom: 0, left: 0 }} accessibilityLayer={false}>
          <CartesianGrid horizontal={false} stroke="var(--line)" strokeWidth={0.5} />
          <XAxis
            {...AXIS}
            type="number"
            dataKey="difference"
            domain={[-reach, reach]}
            ticks={scaleLinear([-reach, reach], [0, 1]).ticks(5)}
            interval={0}
            tickFormatter={(value: number) => differenceWords(value, measure.unit)}
            height={AXIS_HEIGHT - 6}
          />
          <YAxis
            {...AXIS}
            type="category"
            reversed
            dataKey="label"
            allowDuplicatedCategory={false}
            width={170}
            axisLine={false}
          />
          <ReferenceLine x={0} stroke="var(--quiet)" />
          <Scatter data={data} fill="var(--ink)" isAnimationActive={false}>
            <ErrorBar
              dataKey="reach"
              direction="x"
              stroke="var(--ink)"
              strokeWidth={1.5}
              width={6}
              isAnimationActive={false}
            />
          </Scatter>
        </ScatterChart>
      </ResponsiveContainer>
    </div>
  );
}

/** As far to one side as to the other, with some room. */
function reachOf(
  data: readonly { readonly difference: number; readonly reach: readonly number[] }[],
): number {
  const ends = data.flatMap(({ difference, reach: [down, up] }) => [difference - down!, difference + up!]);
  return Math.max(...ends.map(Math.abs)) * 1.1;
}
