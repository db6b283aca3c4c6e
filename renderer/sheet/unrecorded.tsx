import type { Frame } from './frame.ts';

/** Where nothing was recorded: blank between two thin dotted edges, through all panels. */
export function Unrecorded({ frame }: { readonly frame: Frame }) {
  const { sheet, xOfRow, seen, profile, height } = frame;
  const { gapBefore, timeS } = sheet.columns;
  const gaps = [];
  for (let row = 1; row < gapBefore.length; row++)
    if (gapBefore[row] === 1 && timeS[row]! > seen.startS && timeS[row - 1]! < seen.endS) gaps.push(row);
  const tall = height - profile.top;
  return gaps.map((row) => {
    const [a, b] = [xOfRow(row - 1), xOfRow(row)];
    const [from, to] = a < b ? [a, b] : [b, a];
    return (
      <g key={row} className="unrecorded">
        <title>{`Not recorded for ${Math.round(timeS[row]! - timeS[row - 1]!)} s`}</title>
        <rect x={from} y={profile.top} width={to - from} height={tall} />
        <line x1={from} x2={from} y1={profile.top} y2={profile.top + tall} />
        <line x1={to} x2={to} y1={profile.top} y2={profile.top + tall} />
        {to - from > 66 ? (
          <text x={(from + to) / 2} y={profile.top + 26} textAnchor="middle">
            not recorded
          </text>
        ) : null}
      </g>
    );
  });
}
