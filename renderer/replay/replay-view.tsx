import { useMemo, useRef, useState, type PointerEvent, type RefObject } from 'react';
import type { Dots, Sheet } from '../../core/sheet/sheet.ts';
import { frameOf, wholeRange, type Frame, type SheetView } from '../sheet/frame.ts';
import { SheetFigure } from '../sheet/sheet-figure.tsx';
import { PathTable } from '../tables/path-table.tsx';
import { Cursor } from './cursor.tsx';
import { ExcursionList, MomentList } from './moments.tsx';
import { deedOf } from './keys.ts';
import type { Moment } from './moment.ts';
import { NowPanel } from './now-panel.tsx';
import type { OtherSheet } from './other-sheets.ts';
import { OverlayChoice } from './overlay-choice.tsx';
import { Player } from './player.tsx';
import { useKeys } from './use-keys.ts';
import { zoomed } from './range.ts';
import { momentAtX } from './under-pointer.ts';
import { useRoom } from './use-room.ts';
import { ViewControls, type Looks } from './view-controls.tsx';
import { useWheel } from './use-wheel.ts';

interface Props {
  readonly sheet: Sheet;
  readonly moment: Moment;
  readonly dots: Dots;
  /** Other approaches at the same facility, that can be laid over this one. */
  readonly candidates: readonly OtherSheet[];
}

const AT_FIRST: Looks = { scale: 'dots', extras: false, recorded: false, fixes: false, asNeedles: false };

/** One approach to be gone through: the sheet under one cursor, the values at it, and what happened, to jump to. */
export function ReplayView({ sheet, moment, dots, candidates }: Props) {
  const [axis, setAxis] = useState<SheetView['axis']>('distance');
  const [range, setRange] = useState<SheetView['range']>(() => wholeRange(sheet, 'distance'));
  const [looks, setLooks] = useState(AT_FIRST);
  const [overlaid, setOverlaid] = useState<readonly string[]>([]);
  const [isPlaying, setPlaying] = useState(false);
  const holder = useRef<HTMLDivElement>(null);
  const frame = useFrame(sheet, holder, { axis, range, dots, looks });
  const others = useMemo(
    () => candidates.filter(({ id }) => overlaid.includes(id)).map((other) => other.sheet),
    [candidates, overlaid],
  );
  const zoom = (way: 'in' | 'out') => {
    const times = way === 'in' ? ZOOM_IN : 1 / ZOOM_IN;
    const about = frame.x.invert(frame.xOfTime(moment.get()));
    setRange(zoomed(sheet, axis, range, times, about));
  };
  const press = (event: KeyboardEvent) => {
    const deed = deedOf(event.key, event.shiftKey, sheet, moment.get());
    if (deed === null) return;
    event.preventDefault();
    if ('to' in deed) moment.set(deed.to);
    else if ('zoom' in deed) zoom(deed.zoom);
    else setPlaying(!isPlaying);
  };
  useKeys(press);
  const setWholeAxis = (next: SheetView['axis']) => {
    setAxis(next);
    setRange(wholeRange(sheet, next));
  };
  return (
    <div className="replay">
      <ViewControls {...{ sheet, axis, looks, setLooks, setRange, zoom }} setAxis={setWholeAxis} />
      <div className="replay-body">
        <div className="sheet-side">
          <PointedSheet {...{ holder, frame, others, moment, range, setRange }} />
          <Player {...{ sheet, moment, isPlaying, setPlaying }} />
          <details className="numbers">
            <summary>The numbers behind the sheet</summary>
            <PathTable sheet={sheet} dots={dots} />
          </details>
        </div>
        <aside className="now-side" aria-label="At the cursor, and what happened">
          <NowPanel sheet={sheet} moment={moment} dots={dots} asNeedles={looks.asNeedles} />
          <MomentList sheet={sheet} moment={moment} />
          <ExcursionList sheet={sheet} moment={moment} dots={dots} />
          <OverlayChoice candidates={candidates} overlaid={overlaid} choose={setOverlaid} />
          <p className="aside small-print">{KEYS}</p>
        </aside>
      </div>
    </div>
  );
}

const ZOOM_IN = 0.6;
const KEYS =
  'Left and right: a second, with Shift ten. Up and down: from event to event. Home and End. Space plays. ' +
  '+ and − zoom, as does the wheel with Ctrl.';

interface Seen {
  readonly axis: SheetView['axis'];
  readonly range: SheetView['range'];
  readonly dots: Dots;
  readonly looks: Looks;
}

/** Where everything stands, reckoned anew only when something of it changes. */
function useFrame(sheet: Sheet, holder: RefObject<HTMLElement | null>, seen: Seen): Frame {
  const { axis, range, dots, looks } = seen;
  const { widthPx, heightPx } = useRoom(holder);
  const { extras, recorded, fixes } = looks;
  const scale = looks.scale === 'feet' ? 'feet' : dots;
  return useMemo(
    () => frameOf(sheet, { axis, range, widthPx, heightPx, scale, extras, recorded, fixes }),
    [sheet, axis, range, widthPx, heightPx, scale, extras, recorded, fixes],
  );
}

interface PointedProps {
  readonly holder: RefObject<HTMLDivElement | null>;
  readonly frame: Frame;
  readonly others: readonly Sheet[];
  readonly moment: Moment;
  readonly range: SheetView['range'];
  readonly setRange: (range: SheetView['range']) => void;
}

/** The sheet with the cursor over it: pressed or dragged along, the cursor follows. */
function PointedSheet({ holder, frame, others, moment, range, setRange }: PointedProps) {
  const drawn = useMemo(() => <SheetFigure frame={frame} others={others} />, [frame, others]);
  useWheel(holder, { frame, range, setRange });
  const point = (event: PointerEvent<HTMLDivElement>) => {
    if (event.buttons !== 1) return;
    const box = event.currentTarget.getBoundingClientRect();
    const x = (event.clientX - box.left) * (frame.width / box.width);
    moment.set(momentAtX(frame, x, moment.get()));
  };
  return (
    <div
      ref={holder}
      className="sheet-holder"
      tabIndex={0}
      role="group"
      aria-label="Sheet. Arrow keys move the cursor, Space plays."
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        point(event);
      }}
      onPointerMove={point}
    >
      {drawn}
      <Cursor frame={frame} moment={moment} />
    </div>
  );
}
