import type { Dots } from '../../core/sheet/sheet.ts';

interface Props {
  readonly localizer: number;
  readonly glidepath: number;
  readonly dots: Dots;
}

const SIZE = 170;
const MID = SIZE / 2;
const REACH = 68;

/** The two needles as a pilot saw them: each moves to where the path is, away from where the aircraft was. */
export function Needles({ localizer, glidepath, dots }: Props) {
  const toward = (fullScale: number) => MID - Math.max(-1, Math.min(1, fullScale)) * REACH;
  const marks = Array.from({ length: dots }, (_, i) => (i + 1) / dots).flatMap((part) => [part, -part]);
  const [x, y] = [toward(localizer), SIZE - toward(glidepath)];
  return (
    <svg className="needles" viewBox={`0 0 ${SIZE} ${SIZE}`} width={SIZE} height={SIZE} aria-hidden="true">
      <rect x={4} y={4} width={SIZE - 8} height={SIZE - 8} />
      {marks.map((part) => (
        <g key={part} className="marks">
          <circle cx={MID + part * REACH} cy={MID} r={2.5} />
          <circle cx={MID} cy={MID + part * REACH} r={2.5} />
        </g>
      ))}
      <circle className="centre" cx={MID} cy={MID} r={7} />
      {Number.isNaN(localizer) ? null : <line className="localizer" x1={x} x2={x} y1={14} y2={SIZE - 14} />}
      {Number.isNaN(glidepath) ? null : <line className="glidepath" x1={14} x2={SIZE - 14} y1={y} y2={y} />}
    </svg>
  );
}
