import { useEffect, useState, useSyncExternalStore } from 'react';
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
  const share = (at: number) => `${(((at - startS) / (endS - startS)) * 100).toFixed(2)}%`;
  return (
    <div className="scrubber">
      <svg aria-hidden="true" width="100%" height="14">
        {sheet.excursions.map((excursion) => (
          <rect
            key={`${excursion.criterionId} ${excursion.startS}`}
            className="excursion"
            x={share(excursion.startS)}
            width={share(startS + Math.max(excursion.endS - excursion.startS, 1))}
            y={7}
            height={7}
          />
        ))}
        {sheet.events.map((event) => (
          <line
            key={`${event.kind} ${event.timeS}`}
            x1={share(event.timeS)}
            x2={share(event.timeS)}
            y1={0}
            y2={14}
          />
        ))}
      </svg>
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

const KEYS = new Set(['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'Home', 'End']);
