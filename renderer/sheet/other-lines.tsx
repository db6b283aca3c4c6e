import type { Sheet } from '../../core/sheet/sheet.ts';
import type { Frame } from './frame.ts';
import { linePath } from './lines.ts';
import { runsIn, valueAtRow, type Row } from './rows.ts';

interface Props {
  readonly frame: Frame;
  readonly others: readonly Sheet[];
  /** In a panel: where a row of another sheet stands. */
  readonly y: (other: Sheet) => (row: Row) => number;
}

/**
 * Other approaches over this one: by distance, since their times are others. Each has a line style and carries its
 * number at the left.
 */
export function OtherLines({ frame, others, y }: Props) {
  const { view, x, left, right } = frame;
  if (view.axis === 'time') return null;
  return others.map((other, i) => {
    const yOf = y(other);
    const xOf = (row: Row) => x(valueAtRow(other.columns.distanceNm, row));
    const runs = runsIn(other.columns, other.span, yOf);
    const labelled = runs.flat().find((row) => xOf(row) >= left + 4 && xOf(row) <= right);
    return (
      <g key={`${i} ${other.title}`} className={`other other-${i % OTHER_STYLES}`}>
        <path d={linePath(runs, xOf, yOf)} />
        {labelled === undefined ? null : (
          <text x={Math.max(xOf(labelled), left + 4)} y={yOf(labelled) - 4}>
            {String.fromCharCode(65 + i)}
          </text>
        )}
      </g>
    );
  });
}

/** So many are told apart. */
const OTHER_STYLES = 4;
