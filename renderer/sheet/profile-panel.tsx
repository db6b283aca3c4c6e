import { whole } from '../../core/units/whole.ts';
import type { Sheet, SheetHeights } from '../../core/sheet/sheet.ts';
import { FEET_PER_NM } from '../../core/units/units.ts';
import { PanelAxis, PanelTitle } from './axis.tsx';
import { ExcursionTints, FlownExcursions } from './excursions.tsx';
import type { Frame } from './frame.ts';
import { linePath } from './lines.ts';
import { OtherLines } from './other-lines.tsx';
import { pathOver } from './path-over.ts';
import { runsIn, valueAtRow, type Row } from './rows.ts';

interface Props {
  readonly frame: Frame;
  readonly others: readonly Sheet[];
  readonly clip: string;
}

/** From the side: the path with its scale, what was flown, gates, decision altitude and the ground. */
export function ProfilePanel({ frame, others, clip }: Props) {
  const { sheet, profile, seen, xOfRow } = frame;
  const { altitudeFt, indicatedFt } = sheet.columns;
  const flown = (row: Row) => valueAtRow(altitudeFt, row);
  const y = (row: Row) => profile.y(flown(row));
  return (
    <g className="profile">
      <PanelAxis frame={frame} panel={profile} ticks={profile.y.ticks(5)} words={whole} />
      <g clipPath={`url(#${clip})`}>
        <ExcursionTints frame={frame} panel={profile} strips={['localizer', 'glidepath']} />
        <ScaleTubes frame={frame} />
        <HeightLines frame={frame} />
        <Ground frame={frame} />
        {indicatedFt && sheet.heights.source !== 'indicated' ? (
          <path
            className="indicated"
            d={linePath(
              runsIn(sheet.columns, seen, (row) => valueAtRow(indicatedFt, row)),
              xOfRow,
              (row) => profile.y(valueAtRow(indicatedFt, row)),
            )}
          />
        ) : null}
        <OtherLines
          frame={frame}
          others={others}
          y={(other) => (row) => profile.y(valueAtRow(other.columns.altitudeFt, row))}
        />
        <path className="flown glidepath" d={linePath(runsIn(sheet.columns, seen, flown), xOfRow, y)} />
        <FlownExcursions frame={frame} strips={['glidepath']} y={y} />
        <FixDots frame={frame} y={y} />
      </g>
      <PanelTitle
        frame={frame}
        panel={profile}
        title="Profile"
        unit={`ft${exaggeration(frame, profile.y)}${dashedWords(sheet)}; no terrain or obstacles are shown`}
      />
    </g>
  );
}

function dashedWords({ columns, heights }: Sheet): string {
  return columns.indicatedFt && heights.source !== 'indicated' ? '; dashed: altimeter' : '';
}

/** Over so many feet a place rounded to the hundredth of a pixel is exact enough. */
export const MANY_FT = 10_000;

/** How much taller than long it is drawn: ", heights × 9". */
function exaggeration({ x, view }: Frame, y: Frame['profile']['y']): string {
  if (view.axis === 'time') return '';
  const perFootAcross = Math.abs(x(1) - x(0)) / FEET_PER_NM;
  const perFootUp = Math.abs(y(MANY_FT) - y(0)) / MANY_FT;
  return `, heights × ${Math.max(1, Math.round(perFootUp / perFootAcross))}`;
}

/** The path as a thin line; about it ¼, ½, ¾ and full scale, one tint on the other. */
function ScaleTubes({ frame }: { readonly frame: Frame }) {
  const { profile } = frame;
  const points = pathOver(frame);
  const outline = (fraction: number) => {
    const edge = (side: 'upFt' | 'downFt') =>
      points.map(
        ({ x, path }) => `${x.toFixed(1)},${profile.y(path.altitudeFt + path[side][fraction]!).toFixed(1)}`,
      );
    return [...edge('upFt'), ...edge('downFt').toReversed()].join(' ');
  };
  return (
    <g className="tubes">
      {[3, 2, 1, 0].map((fraction) => (
        <polygon key={fraction} points={outline(fraction)} />
      ))}
      <polyline
        className="path"
        points={points
          .map(({ x, path }) => `${x.toFixed(1)},${profile.y(path.altitudeFt).toFixed(1)}`)
          .join(' ')}
      />
    </g>
  );
}

const LINES: readonly (readonly [keyof SheetHeights & string, string, string])[] = [
  ['gate1000Ft', '1,000 ft gate', 'gate'],
  ['gate500Ft', '500 ft gate', 'gate'],
  ['decisionFt', 'decision altitude', 'decision'],
];

function HeightLines({ frame }: { readonly frame: Frame }) {
  const { sheet, profile, left, right } = frame;
  const { heights } = sheet;
  return (
    <>
      {LINES.map(([key, words, name]) => {
        const altitudeFt = heights[key] as number | null;
        if (altitudeFt === null) return null;
        const y = profile.y(altitudeFt);
        return (
          <g key={key} className={`height ${name}`}>
            <line x1={left} x2={right} y1={y} y2={y} />
            <text x={left + 6} y={y - 3}>
              {key === 'decisionFt' ? decisionWords(heights) : `${words} ${whole(altitudeFt)}`}
            </text>
          </g>
        );
      })}
    </>
  );
}

function decisionWords({
  decisionFt,
  isDecisionAssumed,
  judgedBy,
  source,
  halfWidthFt,
}: SheetHeights): string {
  const words = isDecisionAssumed ? 'taken for decision altitude' : 'decision altitude';
  const told = `${words} ${whole(decisionFt!)}`;
  if (judgedBy === 'indicated') return told;
  const height = source === 'unnamed' ? 'height from the log' : 'GNSS height';
  return `${told} · ${height}, ± ${Math.ceil(halfWidthFt)} ft. Your altimeter decides.`;
}

/** The runway at the threshold's height; no terrain is known, and none is drawn. */
function Ground({ frame }: { readonly frame: Frame }) {
  const { sheet, profile, x, left, right, view } = frame;
  const y = profile.y(sheet.heights.thresholdFt);
  if (view.axis === 'time') return <line className="ground" x1={left} x2={right} y1={y} y2={y} />;
  return (
    <>
      <line className="ground" x1={left} x2={right} y1={y} y2={y} />
      <line className="runway" x1={x(0)} x2={x(-sheet.beam.runwayLengthFt / FEET_PER_NM)} y1={y} y2={y} />
    </>
  );
}

/** The fixes of the chart at their miles; above the blanks of what was not recorded. */
export function FixMarks({ frame }: { readonly frame: Frame }) {
  return frame.sheet.fixes.map(({ name, distanceNm }) => (
    <FixMark key={name} frame={frame} name={name} distanceNm={distanceNm} />
  ));
}

/** A fix of the chart at its miles. */
function FixMark({ frame, name, distanceNm }: { frame: Frame; name: string; distanceNm: number }) {
  const { x, left, right, profile, view } = frame;
  if (view.axis === 'time') return null;
  const at = x(distanceNm);
  if (at < left || at > right) return null;
  const bottom = profile.top + profile.height;
  return (
    <g className="fix">
      <path d={`M${at},${bottom - 9}l5,9h-10z`} />
      <text x={at + 8} y={bottom - 3}>
        {name} {distanceNm.toFixed(1)} NM
      </text>
    </g>
  );
}

/** Every fix as it was logged, where that is asked for and there is room for it. */
export function FixDots({ frame, y }: { readonly frame: Frame; readonly y: (row: Row) => number }) {
  const { view, sheet, xOfRow, left, right } = frame;
  if (!view.fixes) return null;
  const dots = [];
  for (let row = 0; row < sheet.columns.timeS.length; row++) {
    const x = xOfRow(row);
    if (x >= left && x <= right && !Number.isNaN(y(row)))
      dots.push(`M${x.toFixed(1)},${y(row).toFixed(1)}h0`);
  }
  return <path className="dots" d={dots.join('')} />;
}
