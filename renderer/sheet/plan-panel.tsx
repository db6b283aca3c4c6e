import { whole } from '../../core/units/whole.ts';
import { courseOffsetFt } from '../../core/sheet/beam-lines.ts';
import type { Sheet } from '../../core/sheet/sheet.ts';
import { FEET_PER_NM } from '../../core/units/units.ts';
import { PanelAxis, PanelTitle } from './axis.tsx';
import { ExcursionTints, FlownExcursions } from './excursions.tsx';
import type { Frame } from './frame.ts';
import { linePath } from './lines.ts';
import { OtherLines } from './other-lines.tsx';
import { FixDots, MANY_FT } from './profile-panel.tsx';
import { runsIn, valueAtRow, type Row } from './rows.ts';

interface Props {
  readonly frame: Frame;
  readonly others: readonly Sheet[];
  readonly clip: string;
}

/** From above, along the runway: course, sector, runway and what was flown; what lies right of it is below. */
export function PlanPanel({ frame, others, clip }: Props) {
  const { sheet, plan, seen, xOfRow } = frame;
  const flown = (row: Row) => valueAtRow(sheet.columns.offsetFt, row);
  const y = (row: Row) => plan.y(flown(row));
  return (
    <g className="plan-panel">
      <PanelAxis
        frame={frame}
        panel={plan}
        ticks={plan.y.ticks(4)}
        words={(feet) => (feet === 0 ? '0' : whole(Math.abs(feet)))}
      />
      <g clipPath={`url(#${clip})`}>
        <ExcursionTints frame={frame} panel={plan} strips={['localizer', 'glidepath']} />
        <Sector frame={frame} />
        <OtherLines
          frame={frame}
          others={others}
          y={(other) => (row) => plan.y(valueAtRow(other.columns.offsetFt, row))}
        />
        <path className="flown localizer" d={linePath(runsIn(sheet.columns, seen, flown), xOfRow, y)} />
        <FlownExcursions frame={frame} strips={['localizer']} y={y} />
        <FixDots frame={frame} y={y} />
      </g>
      <PanelTitle frame={frame} panel={plan} title="Plan" unit={`ft off the centreline${widening(frame)}`} />
      <text className="side" x={frame.right - 6} y={plan.top + 14} textAnchor="end">
        left
      </text>
      <text className="side" x={frame.right - 6} y={plan.top + plan.height - 6} textAnchor="end">
        right
      </text>
    </g>
  );
}

function widening({ x, plan, view }: Frame): string {
  if (view.axis === 'time') return '';
  const perFoot = Math.abs(plan.y(MANY_FT) - plan.y(0)) / MANY_FT;
  const times = perFoot / (Math.abs(x(1) - x(0)) / FEET_PER_NM);
  return times < 1.5 ? '' : `, sideways × ${Math.round(times)}`;
}

/** Full and half scale, the course and the runway. */
function Sector({ frame }: { readonly frame: Frame }) {
  const { sheet, plan } = frame;
  const places = placesAlong(frame);
  const edge = (fraction: number) =>
    places.map(
      ({ x, nm }) => `${x.toFixed(1)},${plan.y(courseOffsetFt(sheet.beam, nm, fraction)).toFixed(1)}`,
    );
  const wedge = (fraction: number) => [...edge(fraction), ...edge(-fraction).toReversed()].join(' ');
  return (
    <g className="sector">
      <polygon points={wedge(1)} />
      <polygon points={wedge(0.5)} />
      <polyline className="course" points={edge(0).join(' ')} />
      <Runway frame={frame} />
    </g>
  );
}

function Runway({ frame }: { readonly frame: Frame }) {
  const { sheet, plan, x, view } = frame;
  if (view.axis === 'time') return null;
  const { runwayLengthFt, runwayWidthFt } = sheet.beam;
  const from = x(0);
  const to = x(-runwayLengthFt / FEET_PER_NM);
  const top = plan.y(-runwayWidthFt / 2);
  const tall = Math.max(plan.y(runwayWidthFt / 2) - top, 3);
  return (
    <rect className="runway" x={from} y={plan.y(0) - tall / 2} width={Math.max(to - from, 1)} height={tall} />
  );
}

/** Over miles both ends of the range do, since all lines are straight; over time each moment has its own. */
function placesAlong({ sheet, view, x, xOfRow }: Frame): { x: number; nm: number }[] {
  if (view.axis === 'distance') {
    const antennaNm = -sheet.beam.antennaAlongFt / FEET_PER_NM;
    const [far, near] = view.range;
    return [far, Math.max(near, antennaNm)].map((nm) => ({ x: x(nm), nm }));
  }
  const { distanceNm } = sheet.columns;
  return Array.from(distanceNm, (nm, row) => ({ x: xOfRow(row), nm }));
}
