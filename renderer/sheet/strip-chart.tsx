import type { Sheet, SheetBand } from '../../core/sheet/sheet.ts';
import { PanelAxis, PanelTitle } from './axis.tsx';
import { beyondBand } from './beyond.ts';
import { ExcursionTints } from './excursions.tsx';
import type { Frame, StripPanel } from './frame.ts';
import { areaPath, linePath } from './lines.ts';
import { OtherLines } from './other-lines.tsx';
import { runsIn, type Row } from './rows.ts';
import { stripsOf } from './strips.ts';

interface Props {
  readonly frame: Frame;
  readonly panel: StripPanel;
  readonly others: readonly Sheet[];
  readonly patternId: string;
  readonly clip: string;
}

/** One value over the axis: what was tolerated as a tint, the line with its 95 % band, outside filled, unclear hatched. */
export function StripChart({ frame, panel, others, patternId, clip }: Props) {
  const { sheet, seen, xOfRow } = frame;
  const { strip, y: scale } = panel;
  const y = (row: Row) => scale(strip.valueOf(row));
  const bands = sheet.bands.filter((band) => band.strip === strip.id);
  const runs = runsIn(sheet.columns, seen, strip.valueOf);
  return (
    <g className={`strip ${strip.id}`}>
      <g clipPath={`url(#${clip})`}>
        {bands.map((band) => (
          <Band key={band.startS} frame={frame} panel={panel} band={band} />
        ))}
        <ExcursionTints frame={frame} panel={panel} strips={[strip.id as SheetBand['strip']]} />
        <path
          className="ninety-five"
          d={areaPath(
            runs,
            xOfRow,
            (row) => scale(strip.valueOf(row) - strip.halfOf(row)),
            (row) => scale(strip.valueOf(row) + strip.halfOf(row)),
          )}
        />
        {bands.map((band) => (
          <BeyondBand key={band.startS} frame={frame} panel={panel} band={band} patternId={patternId} />
        ))}
      </g>
      <PanelAxis frame={frame} panel={panel} ticks={strip.ticks} words={strip.tickWords} />
      <g clipPath={`url(#${clip})`}>
        {strip.reference ? (
          <path
            className="reference"
            d={linePath(runsIn(sheet.columns, seen, strip.reference.valueOf), xOfRow, (row) =>
              scale(strip.reference!.valueOf(row)),
            )}
          />
        ) : null}
        <OtherLines frame={frame} others={others} y={(other) => otherY(other, frame, panel)} />
        <path className={`flown ${strip.id}`} d={linePath(runs, xOfRow, y)} />
        <Visual frame={frame} panel={panel} />
      </g>
      <PanelTitle frame={frame} panel={panel} title={strip.title} unit={unitWords(strip)} />
      <Sides frame={frame} panel={panel} />
    </g>
  );
}

function unitWords({ unit, reference }: StripPanel['strip']): string {
  return reference ? `${unit}; dashed: ${reference.words}` : unit;
}

function otherY(other: Sheet, { view, seen }: Frame, { strip, y }: StripPanel): (row: Row) => number {
  const same = stripsOf(other, view, seen).find(({ id }) => id === strip.id);
  return same ? (row) => y(same.valueOf(row)) : () => NaN;
}

interface BandProps {
  readonly frame: Frame;
  readonly panel: StripPanel;
  readonly band: SheetBand;
}

function Band({ frame, panel, band }: BandProps) {
  const { xOfRow, sheet } = frame;
  const { strip, y } = panel;
  const [bottom, top] = y.domain() as [number, number];
  const beyond = (sign: number) => (Math.sign(top - bottom) === sign ? top : bottom);
  const edge = (limit: number | null, sign: number) => (row: Row) =>
    y(limit === null ? beyond(sign) : strip.limitOf(limit, row));
  const runs = runsIn(sheet.columns, band, strip.valueOf);
  return <path className="band" d={areaPath(runs, xOfRow, edge(band.lower, -1), edge(band.upper, 1))} />;
}

/** What of the line was beyond a limit, filled from the limit; and where the 95 % band leaves that open, hatched. */
function BeyondBand({ frame, panel, band, patternId }: BandProps & { readonly patternId: string }) {
  const { xOfRow } = frame;
  const { strip, y } = panel;
  return beyondBand(frame.sheet, strip, band).map(({ limit, outside, open }) => (
    <g key={limit}>
      <path
        className="outside"
        d={areaPath(
          outside,
          xOfRow,
          (row) => y(strip.limitOf(limit, row)),
          (row) => y(strip.valueOf(row)),
        )}
      />
      <path
        fill={`url(#${patternId})`}
        d={areaPath(
          open,
          xOfRow,
          (row) => y(strip.valueOf(row) - strip.halfOf(row)),
          (row) => y(strip.valueOf(row) + strip.halfOf(row)),
        )}
      />
    </g>
  ));
}

/** Below decision altitude a needle means a few feet: it fades. */
function Visual({ frame, panel }: { readonly frame: Frame; readonly panel: StripPanel }) {
  const { sheet, xOfTime } = frame;
  const { needlesUntilS, span } = sheet;
  if (!panel.strip.isNeedle || needlesUntilS === null) return null;
  const [a, b] = [xOfTime(needlesUntilS), xOfTime(span.endS)];
  const [from, to] = a < b ? [a, b] : [b, a];
  return <rect className="faded" x={from} y={panel.top} width={to - from} height={panel.height} />;
}

function Sides({
  frame,
  panel: { strip, top, height },
}: {
  readonly frame: Frame;
  readonly panel: StripPanel;
}) {
  if (!strip.sides) return null;
  const x = frame.right - 6;
  return (
    <>
      <text className="side" x={x} y={top + 14} textAnchor="end">
        {strip.sides[0]}
      </text>
      <text className="side" x={x} y={top + height - 6} textAnchor="end">
        {strip.sides[1]}
      </text>
    </>
  );
}
