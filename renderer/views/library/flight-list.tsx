import { useEffect, useRef, useState, type ReactNode } from 'react';
import { Button } from 'react-aria-components';
import type { FlightOrder, FlightRow } from '../../../electron/bridge/library-calls.ts';

/** Height of a row, px: as in the style sheet. */
const ROW = 52;
/** Rows that are drawn before they are seen. */
const MARGIN = 10;

interface Props {
  readonly total: number;
  readonly row: (index: number) => FlightRow | null;
  /** What is about to be seen. */
  readonly need: (first: number, last: number) => void;
  readonly order: FlightOrder;
  readonly sort: (order: FlightOrder) => void;
  readonly isMarked: (row: FlightRow) => boolean;
  readonly mark: (row: FlightRow, isMarked: boolean) => void;
  readonly open: (row: FlightRow) => void;
  /** By its id, what a standard is called. */
  readonly standard: (id: string) => string;
  readonly showLesson: (row: FlightRow) => void;
}

type Column = readonly [by: FlightOrder['by'], words: string, isFirstDown: boolean];

const COLUMNS: readonly Column[] = [
  ['flown', 'Flown', true],
  ['student', 'Student', false],
  ['facility', 'Facility', false],
  ['outcome', 'Outcome', false],
  ['level', 'Level', true],
  ['score', 'Score', true],
];

/** Approaches as a table, of which only the rows that are seen are drawn. */
export function FlightList(props: Props) {
  const { total, row, need, order, sort } = props;
  const box = useRef<HTMLDivElement>(null);
  const [seen, setSeen] = useState({ first: 0, last: 30 });
  const look = () => {
    const { scrollTop, clientHeight } = box.current!;
    const first = Math.max(0, Math.floor(scrollTop / ROW) - MARGIN);
    setSeen({ first, last: Math.ceil((scrollTop + clientHeight) / ROW) + MARGIN });
  };
  useEffect(() => {
    look();
    addEventListener('resize', look);
    return () => removeEventListener('resize', look);
  }, []);
  const last = Math.min(total - 1, seen.last);
  useEffect(() => need(seen.first, last), [need, seen.first, last]);
  const drawn = Array.from({ length: Math.max(0, last - seen.first + 1) }, (_, i) => seen.first + i);
  return (
    <div className="flight-list" role="table" aria-label="Approaches" aria-rowcount={total + 1}>
      <div role="rowgroup">
        <div role="row" aria-rowindex={1} className="flight-row flight-head">
          <span role="columnheader">
            <span className="unseen">Marked</span>
          </span>
          {COLUMNS.map((column) => (
            <Head key={column[0]} column={column} order={order} sort={sort} />
          ))}
        </div>
      </div>
      {/* It can be gone through by the keyboard, as every part that scrolls. */}
      <div ref={box} role="rowgroup" className="flight-rows" tabIndex={0} onScroll={look}>
        <div role="none" style={{ height: total * ROW }} className="flight-all">
          {drawn.map((index) => {
            const found = row(index);
            return (
              <div
                key={index}
                role="row"
                aria-rowindex={index + 2}
                className="flight-row"
                style={{ top: index * ROW }}
              >
                {found === null ? <span role="cell">…</span> : <Cells {...props} row={found} />}
              </div>
            );
          })}
        </div>
      </div>
    </div>
  );
}

interface HeadProps extends Pick<Props, 'order' | 'sort'> {
  readonly column: Column;
}

function Head({ column: [by, words, isFirstDown], order, sort }: HeadProps) {
  const isThis = order.by === by;
  const sorted = isThis ? (order.isDown ? 'descending' : 'ascending') : 'none';
  return (
    <span role="columnheader" aria-sort={sorted}>
      <Button className="small" onPress={() => sort({ by, isDown: isThis ? !order.isDown : isFirstDown })}>
        {words}
        <span aria-hidden="true">{isThis ? (order.isDown ? ' ↓' : ' ↑') : ''}</span>
      </Button>
    </span>
  );
}

type CellsProps = Omit<Props, 'row'> & { readonly row: FlightRow };

function Cells({ row, isMarked, mark, open, standard, showLesson }: CellsProps) {
  const time = row.startUtc.slice(11, 16);
  const who = row.student ?? 'nobody';
  return (
    <>
      <span role="cell">
        <input
          type="checkbox"
          aria-label={`Mark ${row.fileName}, ${row.date} ${time}`}
          checked={isMarked(row)}
          onChange={({ target }) => mark(row, target.checked)}
        />
      </span>
      <Cell>
        <Button className="link" aria-label={`Lesson of ${who}, ${row.date}`} onPress={() => showLesson(row)}>
          {row.date}
        </Button>{' '}
        <span className="aside">{time}</span>
      </Cell>
      {row.student === null ? <Nobodys fileName={row.fileName} /> : <Cell>{row.student}</Cell>}
      <span role="cell" className="clipped-lines" title={`${row.facility}, ${standard(row.standardId)}`}>
        <span>{row.facility}</span> <span className="aside">{standard(row.standardId)}</span>
      </span>
      <span role="cell">
        <Button className="link clipped" onPress={() => open(row)}>
          {row.summary}
        </Button>
      </span>
      <Cell>{ranged(row.levelLow, row.levelHigh)}</Cell>
      <Cell>{ranged(row.scoreLow, row.scoreHigh)}</Cell>
    </>
  );
}

/** Whose it may be is often told by the log's name. */
function Nobodys({ fileName }: { readonly fileName: string }) {
  return (
    <span role="cell" className="clipped-lines" title={fileName}>
      <span className="aside">nobody yet</span> <span className="aside">{fileName}</span>
    </span>
  );
}

function Cell({ children }: { readonly children: ReactNode }) {
  return (
    <span role="cell">
      <span className="cell">{children}</span>
    </span>
  );
}

/** The figure, or between what it lies; a dash where there is none. */
export function ranged(low: number | null, high: number | null): string {
  if (low === null || high === null) return '–';
  return low === high ? String(low) : `${low} to ${high}`;
}
