import type { Axis } from '../../core/report/sided.ts';
import type { Dots } from '../../core/sheet/sheet.ts';

const SIZE = 170;
const MID = SIZE / 2;
const REACH = 70;
const NARROW = 46;

interface Props {
  readonly axis: Axis;
  readonly fullScale: number;
  readonly dots: Dots;
}

/** Where the aircraft was on one axis, with the path as the zero line; beyond full scale the mark stands at the end, hollow. */
export function Ruler({ axis, fullScale, dots }: Props) {
  const isBeyond = Math.abs(fullScale) > 1;
  const along = Math.max(-1, Math.min(1, fullScale)) * REACH;
  const ticks = Array.from({ length: 2 * dots + 1 }, (_, i) => (i - dots) / dots);
  const isFlat = axis === 'localizer';
  const place = (part: number, aside: number) =>
    isFlat ? [MID + part * REACH, aside] : [aside, MID - part * REACH];
  const mark = isFlat ? `M${MID + along},20l6,12h-12z` : `M20,${MID - along}l12,-6v12z`;
  const [first, last] = isFlat ? ['left', 'right'] : ['low', 'high'];
  return (
    <svg
      className={`ruler ${axis}`}
      viewBox={isFlat ? `0 0 ${SIZE} ${NARROW}` : `0 0 ${NARROW} ${SIZE}`}
      width={isFlat ? SIZE : NARROW}
      height={isFlat ? NARROW : SIZE}
    >
      {ticks.map((part) => {
        const [x1, y1] = place(part, part === 0 ? 4 : 10);
        const [x2, y2] = place(part, 18);
        return <line key={part} x1={x1} y1={y1} x2={x2} y2={y2} className={part === 0 ? 'zero' : ''} />;
      })}
      {Number.isNaN(fullScale) ? null : <path d={mark} className={isBeyond ? 'mark beyond' : 'mark'} />}
      {isFlat ? (
        <>
          <text x={MID - REACH} y={44} textAnchor="middle">
            {first}
          </text>
          <text x={MID + REACH} y={44} textAnchor="middle">
            {last}
          </text>
        </>
      ) : (
        <>
          <text x={26} y={MID + REACH + 12} textAnchor="middle">
            {first}
          </text>
          <text x={26} y={MID - REACH - 4} textAnchor="middle">
            {last}
          </text>
        </>
      )}
    </svg>
  );
}
