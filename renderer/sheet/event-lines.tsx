import type { EventKind } from '../../core/approach/flown-approach.ts';
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

const ROWS = 4;
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

/** What is looked for first on a sheet has its words first; the rest in the order flown. */
const FIRST: readonly EventKind[] = [
  'decision-altitude',
  'missed-approach-start',
  'touchdown',
  'final-approach-fix',
  'gate-1000',
  'gate-500',
];

/** Each in the first row that has room for its words; without any the line alone stands there. */
function placed({ sheet, xOfTime, left, right }: Frame): Placed[] {
  const taken: (readonly [row: number, from: number, to: number])[] = [];
  const rank = ({ kind }: SheetEvent) => (FIRST.includes(kind) ? FIRST.indexOf(kind) : FIRST.length);
  return sheet.events
    .toSorted((a, b) => rank(a) - rank(b))
    .map((event) => ({ event, x: xOfTime(event.timeS) }))
    .filter(({ x }) => x >= left - 0.5 && x <= right + 0.5)
    .map(({ event, x }) => {
      const width = event.words.length * LETTER + 8;
      const isLeft = x + width > right + 10;
      const [from, to] = isLeft ? [x - width, x] : [x, x + width];
      const rows = Array.from({ length: ROWS }, (_, row) => row);
      const free = rows.find((row) => !taken.some(([one, a, b]) => one === row && a < to && b > from));
      if (free === undefined || from < left - 30) return { event, x, row: null, isLeft };
      taken.push([free, from, to]);
      return { event, x, row: free, isLeft };
    });
}
