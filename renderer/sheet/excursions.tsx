import type { BandedStrip, SheetExcursion } from '../../core/sheet/sheet.ts';
import type { Frame, Panel } from './frame.ts';
import { linePath } from './lines.ts';
import { runsIn, type Row } from './rows.ts';

interface TintProps {
  readonly frame: Frame;
  readonly panel: Panel;
  /** Those that are shown here. */
  readonly strips: readonly BandedStrip[];
}

/** A warm tint from top to bottom where something was outside: at the same x in every panel that tells of it. */
export function ExcursionTints({ frame, panel, strips }: TintProps) {
  return frame.sheet.excursions
    .filter(({ strip }) => strip !== null && strips.includes(strip))
    .map((excursion) => {
      const [from, to] = edges(frame, excursion);
      return (
        <rect
          key={`${excursion.criterionId} ${excursion.startS}`}
          className={`excursion-tint ${excursion.strip}`}
          x={from}
          y={panel.top}
          width={Math.max(to - from, 1)}
          height={panel.height}
        />
      );
    });
}

/** The part of the flown line that was outside, drawn over it. */
export function FlownExcursions({
  frame,
  strips,
  y,
}: {
  frame: Frame;
  strips: readonly BandedStrip[];
  y: (row: Row) => number;
}) {
  const { sheet, xOfRow } = frame;
  return sheet.excursions
    .filter(({ strip }) => strip !== null && strips.includes(strip))
    .map((excursion) => (
      <path
        key={`${excursion.criterionId} ${excursion.startS}`}
        className="outside-line"
        d={linePath(runsIn(sheet.columns, excursion, y), xOfRow, y)}
      />
    ));
}

function edges({ xOfTime }: Frame, { startS, endS }: SheetExcursion): [number, number] {
  const [a, b] = [xOfTime(startS), xOfTime(endS)];
  return a < b ? [a, b] : [b, a];
}
