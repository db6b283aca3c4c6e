import type { SheetEvent } from '../../core/sheet/sheet.ts';
import { HEAD_RULE } from './axis.tsx';
import type { Frame } from './frame.ts';

/** The moments of the approach as lines through all panels, named at the top where there is room. */
export function EventLines({ frame }: { readonly frame: Frame }) {
  return (
    <g className="events">
      {placed(frame).map(({ event, x, row, isLeft }) => (
        <g key={`${event.kind} ${event.timeS}`}>
          <line x1={x} x2={x} y1={row === null ? frame.profile.top : rowY(row) - 8} y2={frame.height} />
          {row === null ? null : (
            <text x={isLeft ? x - 3 : x + 3} y={rowY(row)} textAnchor={isLeft ? 'end' : 'start'}>
              {event.words}
            </text>
          )}
        </g>
      ))}
    </g>
  );
}

const ROWS = 3;
const ROW_HEIGHT = 11;
const LETTER = 6.2;

const rowY = (row: number) => HEAD_RULE + 10 + row * ROW_HEIGHT;

interface Placed {
  readonly event: SheetEvent;
  readonly x: number;
  /** Of its words; null where there was no room for them. */
  readonly row: number | null;
  /** Whether the words stand left of the line, since they would leave the sheet at its right. */
  readonly isLeft: boolean;
}

/** From left to right, each in the first row that is free; without a free row the line alone stands there. */
function placed({ sheet, xOfTime, left, right }: Frame): Placed[] {
  const freeFrom = Array.from({ length: ROWS }, () => left);
  return sheet.events
    .map((event) => ({ event, x: xOfTime(event.timeS) }))
    .filter(({ x }) => x >= left - 0.5 && x <= right + 0.5)
    .toSorted((a, b) => a.x - b.x)
    .map(({ event, x }) => {
      const width = event.words.length * LETTER + 8;
      const isLeft = x + width > right + 10;
      const from = isLeft ? x - width : x;
      const row = freeFrom.findIndex((free) => from >= free);
      if (row === -1) return { event, x, row: null, isLeft };
      freeFrom[row] = from + width;
      return { event, x, row, isLeft };
    });
}
