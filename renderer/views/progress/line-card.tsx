import {
  CartesianGrid,
  ComposedChart,
  Line,
  ReferenceLine,
  ResponsiveContainer,
  Tooltip,
  XAxis,
  YAxis,
} from 'recharts';
import type { Progress, ProgressLine } from '../../../core/progress/progress.ts';
import { dayOf } from '../../../core/progress/sentences.ts';
import { gateSentences } from '../../../core/progress/line-block.ts';
import { trendSentence } from '../../../core/progress/trend-words.ts';
import { DOT, GRID, lessonAxis, valueAxis } from './chart-parts.ts';
import { plotOf, type LessonPlot, type LessonPoint } from '../../plots/plot-of.ts';
import { pointWords, unitWords } from '../../plots/words.ts';

interface Props {
  readonly line: ProgressLine;
  readonly lessons: Progress['lessons'];
}

/** One criterion over the lessons: its figures as a small chart, and what can be said of them. */
export function LineCard({ line, lessons }: Props) {
  const plot = plotOf(line, lessons);
  const isAny = plot.points.some(({ value }) => value !== null);
  return (
    <section className={`line-card ${line.id}`} aria-label={line.title}>
      <h2>{line.title}</h2>
      <p className="aside">{unitWords(line)}</p>
      {isAny ? <LessonChart plot={plot} title={line.title} /> : <p className="aside">No lesson tells it.</p>}
      <p>{trendSentence(line)}</p>
      {gateSentences(line).map((sentence) => (
        <p key={sentence} className="aside">
          {sentence}
        </p>
      ))}
    </section>
  );
}

const HEIGHT = 132;

/** The table on the same page has every figure: a screen reader is told of that, and not of the drawing. */
function LessonChart({ plot, title }: { readonly plot: LessonPlot; readonly title: string }) {
  const { points, words, trend } = plot;
  return (
    <div role="img" aria-label={`${title}, lesson by lesson, as the table below has it`}>
      <ResponsiveContainer width="100%" height={HEIGHT}>
        <ComposedChart
          data={[...points]}
          margin={{ top: 4, right: 10, bottom: 0, left: 0 }}
          accessibilityLayer={false}
        >
          <CartesianGrid {...GRID} />
          <XAxis
            {...lessonAxis(
              'lesson',
              points.map(({ lesson }) => lesson),
            )}
          />
          <YAxis {...valueAxis(plot, words)} />
          {trend === null ? null : (
            <ReferenceLine
              segment={trend.map(({ lesson, value }) => ({ x: lesson, y: value })) as never}
              stroke="var(--quiet)"
              strokeDasharray="5 4"
              ifOverflow="hidden"
            />
          )}
          <Tooltip
            content={<PointTip plot={plot} />}
            cursor={{ stroke: 'var(--line)' }}
            isAnimationActive={false}
          />
          <Line
            dataKey="value"
            className="flown"
            stroke="var(--series)"
            strokeWidth={1.75}
            dot={DOT}
            activeDot={{ ...DOT, fill: 'var(--series)' }}
            connectNulls={false}
            isAnimationActive={false}
          />
        </ComposedChart>
      </ResponsiveContainer>
    </div>
  );
}

interface TipProps {
  readonly plot: LessonPlot;
  readonly active?: boolean;
  readonly payload?: readonly { readonly payload: LessonPoint }[];
}

function PointTip({ plot, active, payload }: TipProps) {
  const point = payload?.[0]?.payload;
  if (!active || !point) return null;
  return (
    <div className="point-tip">
      <strong>
        Lesson {point.lesson}, {dayOf(point.date)}
      </strong>
      {pointWords(point, plot.words).map((words) => (
        <span key={words}>{words}</span>
      ))}
    </div>
  );
}
