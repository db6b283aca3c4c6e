import { useEffect, useMemo, useState, useSyncExternalStore } from 'react';
import { Button } from 'react-aria-components';
import type { Sheet } from '../../core/sheet/sheet.ts';
import { clockOf } from '../sheet/words.ts';
import type { Moment } from './moment.ts';

interface Props {
  readonly sheet: Sheet;
  readonly moment: Moment;
  readonly isPlaying: boolean;
  readonly setPlaying: (yes: boolean) => void;
}

const SPEEDS = [0.5, 1, 2, 4, 8, 16] as const;

/** Plays the approach, and shows where in it the cursor is: a slider with the events and excursions marked on it. */
export function Player({ sheet, moment, isPlaying, setPlaying }: Props) {
  const [speed, setSpeed] = useState(4);
  const { startS, endS } = sheet.span;
  useEffect(() => {
    if (!isPlaying) return;
    let frame = 0;
    let before = performance.now();
    if (moment.get() >= endS) moment.set(startS);
    const step = (now: number) => {
      const next = moment.get() + ((now - before) / 1000) * speed;
      before = now;
      moment.set(Math.min(next, endS));
      if (next >= endS) setPlaying(false);
      else frame = requestAnimationFrame(step);
    };
    frame = requestAnimationFrame(step);
    return () => cancelAnimationFrame(frame);
  }, [isPlaying, speed, moment, startS, endS, setPlaying]);
  return (
    <div className="player">
      <Button className="button" onPress={() => setPlaying(!isPlaying)}>
        {isPlaying ? 'Pause' : 'Play'}
      </Button>
      <label className="speed">
        <span>Speed</span>
        <select value={speed} onChange={({ target }) => setSpeed(Number(target.value))}>
          {SPEEDS.map((times) => (
            <option key={times} value={times}>
              {times === 0.5 ? '½' : times} ×
            </option>
          ))}
        </select>
      </label>
      <Scrubber sheet={sheet} moment={moment} />
    </div>
  );
}

function Scrubber({ sheet, moment }: { readonly sheet: Sheet; readonly moment: Moment }) {
  const s = useSyncExternalStore(moment.subscribe, moment.get);
  const { startS, endS } = sheet.span;
  const marks = useMemo(() => <Marks sheet={sheet} />, [sheet]);
  return (
    <div className="scrubber">
      {marks}
      <input
        type="range"
        aria-label="Moment of the approach"
        aria-valuetext={clockOf(s)}
        min={startS}
        max={endS}
        step="any"
        value={s}
        onChange={({ target }) => moment.set(target.valueAsNumber)}
        onKeyDown={(event) => {
          // The replay's own keys do the same everywhere, in whole seconds.
          if (KEYS.has(event.key)) event.preventDefault();
        }}
      />
    </div>
  );
}

/** Events as lines, what was outside as bars. */
function Marks({ sheet: { span, events, excursions } }: { readonly sheet: Sheet }) {
  const wide = span.endS - span.startS;
  const share = (seconds: number) => `${((seconds / wide) * 100).toFixed(2)}%`;
  return (
    <svg aria-hidden="true" width="100%" height="14">
      {excursions.map(({ criterionId, startS, endS }) => (
        <rect
          key={`${criterionId} ${startS}`}
          className="excursion"
          x={share(startS - span.startS)}
          width={share(Math.max(endS - startS, 1))}
          y={7}
          height={7}
        />
      ))}
      {events.map(({ kind, timeS }) => (
        <line
          key={`${kind} ${timeS}`}
          x1={share(timeS - span.startS)}
          x2={share(timeS - span.startS)}
          y1={0}
          y2={14}
        />
      ))}
    </svg>
  );
}

const KEYS = new Set(['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'Home', 'End']);
