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
import { comparisonSentences } from '../../../core/progress/school/comparison-words.ts';
import { valueTitle } from '../../../core/progress/school/value-words.ts';
import type { SchoolGroup, SchoolGroups } from '../../../core/progress/school/school.ts';
import type { ProgressUnit } from '../../../core/progress/progress.ts';
import type { SchoolMeasure } from '../../../core/progress/school/school-input.ts';
import { differenceWords, valueWords } from '../../plots/plot-of.ts';
import { WideTable } from '../../tables/wide-table.tsx';
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
      <p className="aside">
        {valueTitle(measure)}; {measure.better} is better.
      </p>
      <GroupsChart groups={groups} measure={measure} />
      <WideTable name={`${measure.title}, by group`}>
        <table className="groups">
          <thead>
            <tr>
              <th scope="col">Group</th>
              <th scope="col">Students</th>
              <th scope="col">Approaches</th>
              <th scope="col">Mean of its students</th>
              <th scope="col">Adjusted</th>
              <th scope="col">Against the others</th>
            </tr>
          </thead>
          <tbody>
            {groups.groups.map((group) => (
              <GroupRow key={group.key} group={group} groups={groups} measure={measure} />
            ))}
          </tbody>
        </table>
      </WideTable>
    </section>
  );
}

interface RowProps {
  readonly group: SchoolGroup;
  readonly groups: SchoolGroups;
  readonly measure: SchoolMeasure;
}

function GroupRow({ group, groups, measure }: RowProps) {
  const { label, students, approaches, mean, adjustedMean } = group;
  const value = (known: number | null) => (known === null ? '–' : valueWords(known, measure.unit));
  return (
    <tr>
      <th scope="row">{label}</th>
      <td>{students}</td>
      <td>{approaches}</td>
      <td>{value(mean)}</td>
      <td>{value(adjustedMean)}</td>
      <td className={group.comparison === null ? 'against aside' : 'against'}>
        {comparisonSentences(group, groups, measure).join(' ')}
      </td>
    </tr>
  );
}

interface Difference {
  readonly label: string;
  readonly difference: number;
  /** From the difference down and up to the ends of its interval. */
  readonly reach: readonly [number, number];
}

/** The differences with their intervals; the table below has every figure. */
function GroupsChart({ groups: { groups }, measure }: Props) {
  const differences = groups.flatMap(({ label, comparison }): Difference[] => {
    if (comparison === null) return [];
    const { difference, interval } = comparison;
    return [{ label, difference, reach: [difference - interval.low, interval.high - difference] }];
  });
  if (differences.length === 0) return null;
  return (
    <>
      <p className="aside">
        Each group less all others, adjusted, with the 95 % interval: to the{' '}
        {measure.better === 'higher' ? 'right' : 'left'} of the line is better.
      </p>
      <div role="img" aria-label="Differences between the groups, as the table below has them">
        <DifferencesChart differences={differences} unit={measure.unit} />
      </div>
    </>
  );
}

const ROW_HEIGHT = 34;
const AXIS_HEIGHT = 30;

interface ChartProps {
  readonly differences: readonly Difference[];
  readonly unit: ProgressUnit;
}

function DifferencesChart({ differences, unit }: ChartProps) {
  const reach = reachOf(differences, unit);
  return (
    <ResponsiveContainer width="100%" height={differences.length * ROW_HEIGHT + AXIS_HEIGHT}>
      <ScatterChart margin={{ top: 4, right: 16, bottom: 0, left: 0 }} accessibilityLayer={false}>
        <CartesianGrid horizontal={false} stroke="var(--line)" strokeWidth={0.5} />
        <XAxis
          {...AXIS}
          type="number"
          dataKey="difference"
          domain={[-reach, reach]}
          ticks={scaleLinear([-reach, reach], [0, 1]).ticks(5)}
          interval={0}
          tickFormatter={(value: number) => differenceWords(value, unit)}
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
        <Scatter data={differences} fill="var(--ink)" isAnimationActive={false}>
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
  );
}

/** So far at least, so that the marks differ and little does not look like much. Ours. */
const LEAST_REACH = { 'full scale': 0.05, kt: 1, share: 0.05, level: 0.1 } as const;

/** As far to one side as to the other, with some room. */
function reachOf(differences: readonly Difference[], unit: ProgressUnit): number {
  const ends = differences.flatMap(({ difference, reach: [down, up] }) => [
    difference - down,
    difference + up,
  ]);
  return Math.max(LEAST_REACH[unit], ...ends.map(Math.abs)) * 1.1;
}
