import {
  Area,
  CartesianGrid,
  ComposedChart,
  Line,
  ResponsiveContainer,
  Tooltip,
  XAxis,
  YAxis,
} from 'recharts';
import type { LessonSpread as Spread } from '../../../core/progress/school/school.ts';
import type { SchoolMeasure } from '../../../core/progress/school/school-input.ts';
import { axisOf, valueWords } from '../../plots/plot-of.ts';
import { unitWords } from '../../plots/words.ts';
import { DOT, GRID, lessonAxis, valueAxis } from './chart-parts.ts';
import { SpreadTable } from './spread-table.tsx';

interface Props {
  readonly measure: SchoolMeasure;
  readonly distribution: readonly Spread[];
}

const HEIGHT = 220;

/** How the students' 1st, 2nd, … lessons spread: the middle one, the middle half, and all of them. */
export function LessonSpread({ measure, distribution }: Props) {
  if (distribution.length === 0) return null;
  return (
    <section className="lesson-spread">
      <h2>{measure.title} over the lessons</h2>
      <p className="aside">
        {unitWords(measure)}. Line: the middle student; dark: the middle half; light: all of them.
      </p>
      <div role="img" aria-label={`${measure.title} over the lessons, as the figures below have it`}>
        <SpreadChart measure={measure} distribution={distribution} />
      </div>
      <SpreadTable measure={measure} distribution={distribution} />
    </section>
  );
}

function SpreadChart({ measure, distribution }: Props) {
  const axis = axisOf(
    measure.unit,
    distribution.map(({ largest }) => largest),
  );
  const data = distribution.map((spread) => ({
    ...spread,
    all: [spread.least, spread.largest],
    half: [spread.lowerQuartile, spread.upperQuartile],
  }));
  return (
    <ResponsiveContainer width="100%" height={HEIGHT}>
      <ComposedChart
        data={data}
        margin={{ top: 6, right: 10, bottom: 16, left: 0 }}
        accessibilityLayer={false}
      >
        <CartesianGrid {...GRID} />
        <XAxis
          {...lessonAxis(
            'ordinal',
            distribution.map(({ ordinal }) => ordinal),
          )}
          label={{ value: 'lesson', position: 'bottom', offset: -2, fill: 'var(--quiet)', fontSize: 11 }}
        />
        <YAxis {...valueAxis(axis, (value) => valueWords(value, measure.unit))} />
        <Tooltip content={<SpreadTip measure={measure} />} isAnimationActive={false} />
        <Area dataKey="all" {...TINT} fillOpacity={0.1} />
        <Area dataKey="half" {...TINT} fillOpacity={0.2} />
        <Line dataKey="median" stroke="var(--ink)" strokeWidth={1.75} dot={DOT} isAnimationActive={false} />
      </ComposedChart>
    </ResponsiveContainer>
  );
}

const TINT = { fill: 'var(--ink)', stroke: 'none', activeDot: false, isAnimationActive: false } as const;

interface TipProps {
  readonly measure: SchoolMeasure;
  readonly active?: boolean;
  readonly payload?: readonly { readonly payload: Spread }[];
}

function SpreadTip({ measure: { unit }, active, payload }: TipProps) {
  const spread = payload?.[0]?.payload;
  if (!active || !spread) return null;
  const words = (value: number) => valueWords(value, unit);
  return (
    <div className="point-tip">
      <strong>
        Lesson {spread.ordinal}, {spread.students} {spread.students === 1 ? 'student' : 'students'}
      </strong>
      <span>Middle {words(spread.median)}</span>
      <span>
        Middle half {words(spread.lowerQuartile)} to {words(spread.upperQuartile)}
      </span>
      <span>
        All {words(spread.least)} to {words(spread.largest)}
      </span>
    </div>
  );
}
