import { scaleLinear } from 'd3-scale';
import { line as lineOf } from 'd3-shape';
import type { LessonPlot, LessonPoint } from './plot-of.ts';

interface Props {
  readonly plot: LessonPlot;
  readonly title: string;
}

const WIDTH = 300;
const HEIGHT = 120;
const BOX = { left: 44, right: 292, top: 8, bottom: 100 };

/** One line of a record as plain SVG, for paper: without an effect and without measuring. */
export function LessonPlotFigure({ plot, title }: Props) {
  const { points, domain, ticks, words, trend } = plot;
  const x = scaleLinear([0.5, points.length + 0.5], [BOX.left, BOX.right]).interpolate(toTenths);
  const y = scaleLinear(domain, [BOX.bottom, BOX.top]).interpolate(toTenths);
  const known = points.filter(({ value }) => value !== null);
  return (
    <svg
      className="lesson-plot"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`${title}, lesson by lesson`}
    >
      {ticks.map((tick) => (
        <g key={tick}>
          <line className="grid" x1={BOX.left} x2={BOX.right} y1={y(tick)} y2={y(tick)} />
          <text x={BOX.left - 6} y={y(tick) + 4} textAnchor="end">
            {words(tick)}
          </text>
        </g>
      ))}
      {lessonTicks(points).map((lesson) => (
        <text key={lesson} x={x(lesson)} y={BOX.bottom + 15} textAnchor="middle">
          {lesson}
        </text>
      ))}
      {trend === null ? null : (
        <line
          className="slope"
          x1={x(trend[0].lesson)}
          y1={y(trend[0].value)}
          x2={x(trend[1].lesson)}
          y2={y(trend[1].value)}
        />
      )}
      <path className="flown" d={path(points, x, y)} />
      {known.map(({ lesson, value }) => (
        <circle key={lesson} cx={x(lesson)} cy={y(value!)} r={3} />
      ))}
    </svg>
  );
}

/** The same to the last byte on every engine. */
const toTenths = (from: number, to: number) => (share: number) =>
  Math.round((from + (to - from) * share) * 10) / 10;

/** No more numbers than there is room for. */
const MOST_TICKS = 12;

function lessonTicks(points: readonly LessonPoint[]): number[] {
  const every = Math.ceil(points.length / MOST_TICKS);
  return points.map(({ lesson }) => lesson).filter((lesson) => (lesson - 1) % every === 0);
}

/** Broken where a lesson does not tell. */
function path(
  points: readonly LessonPoint[],
  x: (lesson: number) => number,
  y: (value: number) => number,
): string {
  const draw = lineOf<LessonPoint>()
    .defined(({ value }) => value !== null)
    .x(({ lesson }) => x(lesson))
    .y(({ value }) => y(value!));
  return draw(points) ?? '';
}
