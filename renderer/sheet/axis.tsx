import { clockOf } from './words.ts';
import type { Frame, Panel } from './frame.ts';

/** How what is unclear is hatched. */
export function Hatch({ id }: { readonly id: string }) {
  return (
    <pattern id={id} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <line x1="0" y1="0" x2="0" y2="5" className="hatch" />
    </pattern>
  );
}

/** Miles to go, or clock times, over all panels; a thin line through them at each. */
export function MilesAxis({ frame }: { readonly frame: Frame }) {
  const { x, left, right, height, view, sheet } = frame;
  const isTime = view.axis === 'time';
  const ticks = isTime ? timeTicks(view.range) : x.ticks(Math.max(4, Math.floor((right - left) / 70)));
  const words = (tick: number) => (isTime ? clockOf(tick) : String(tick).replace('-', '−'));
  return (
    <g className="axis">
      <text x={left} y={12} className="caption">
        {isTime ? `time, ${sheet.zone}` : 'miles to the threshold'}
      </text>
      {ticks.map((tick) => (
        <g key={tick}>
          <line x1={x(tick)} x2={x(tick)} y1={HEAD_RULE} y2={height} />
          <text x={x(tick)} y={HEAD_RULE - 3} textAnchor="middle">
            {words(tick)}
          </text>
        </g>
      ))}
    </g>
  );
}

/** Where the axis' words end and the panels' lines begin. */
export const HEAD_RULE = 28;

const STEPS_S = [5, 10, 15, 30, 60, 120, 300, 600, 1200, 1800, 3600];
const MOST_TICKS = 12;

function timeTicks([fromS, toS]: readonly [number, number]): number[] {
  const step = STEPS_S.find((s) => (toS - fromS) / s <= MOST_TICKS) ?? 7200;
  const ticks = [];
  for (let s = Math.ceil(fromS / step) * step; s <= toS; s += step) ticks.push(s);
  return ticks;
}

interface PanelProps {
  readonly frame: Frame;
  readonly panel: Panel;
  readonly ticks: readonly number[];
  readonly words: (tick: number) => string;
}

/** The frame of a panel, and the numbers at its left. */
export function PanelAxis({ frame, panel, ticks, words }: PanelProps) {
  const { left, right } = frame;
  const { top, height, y } = panel;
  return (
    <g className="axis">
      <rect className="edge" x={left} y={top} width={right - left} height={height} />
      {ticks.map((tick) => (
        <g key={tick}>
          <line x1={left} x2={right} y1={y(tick)} y2={y(tick)} />
          <text x={left - 6} y={y(tick) + 4} textAnchor="end">
            {words(tick)}
          </text>
        </g>
      ))}
    </g>
  );
}

interface TitleProps {
  readonly frame: Frame;
  readonly panel: Panel;
  readonly title: string;
  readonly unit: string;
}

/** What a panel shows, above it. */
export function PanelTitle({ frame, panel, title, unit }: TitleProps) {
  return (
    <text className="title" x={frame.left} y={panel.top - 5}>
      {title}
      {unit ? <tspan className="unit">{`  ${unit}`}</tspan> : null}
    </text>
  );
}
