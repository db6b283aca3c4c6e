import { Button } from 'react-aria-components';
import type { Sheet } from '../../core/sheet/sheet.ts';
import type { SheetView } from '../sheet/frame.ts';
import { Choice, Tick } from '../views/fields.tsx';
import { partOf } from './range.ts';

/** How the sheet is looked at. */
export interface Looks {
  readonly scale: 'dots' | 'feet';
  readonly extras: boolean;
  readonly recorded: boolean;
  readonly fixes: boolean;
  readonly asNeedles: boolean;
}

interface Props {
  readonly sheet: Sheet;
  readonly axis: SheetView['axis'];
  readonly looks: Looks;
  readonly setAxis: (axis: SheetView['axis']) => void;
  readonly setLooks: (looks: Looks) => void;
  readonly setRange: (range: SheetView['range']) => void;
  readonly zoom: (way: 'in' | 'out') => void;
}

const PARTS = [
  ['whole', 'Whole approach'],
  ['final', 'Final'],
  ['last', 'Last 3 miles'],
] as const;

/** What of the sheet is seen, and in what units; what a log has nothing for is not offered. */
export function ViewControls({ sheet, axis, looks, setAxis, setLooks, setRange, zoom }: Props) {
  const { columns } = sheet;
  const hasRecorded = columns.recordedLocalizer !== null || columns.recordedGlidepath !== null;
  const ticks = [
    ['extras', 'Other values', Object.keys(columns.extras).length > 0],
    ['recorded', 'Recorded needles', hasRecorded],
    ['fixes', 'Every fix', true],
    ['asNeedles', 'As needles', true],
  ] as const;
  return (
    <div className="view-controls" role="group" aria-label="How the sheet is shown">
      {PARTS.map(([part, words]) => {
        const range = partOf(sheet, axis, part);
        return range === null ? null : (
          <Button key={part} className="button" onPress={() => setRange(range)}>
            {words}
          </Button>
        );
      })}
      <Button className="button" aria-label="Zoom in" onPress={() => zoom('in')}>
        +
      </Button>
      <Button className="button" aria-label="Zoom out" onPress={() => zoom('out')}>
        −
      </Button>
      <Choice words="Over" value={axis} choose={(next) => setAxis(next as SheetView['axis'])}>
        <option value="distance">miles to go</option>
        <option value="time">time</option>
      </Choice>
      <Choice
        words="Needles in"
        value={looks.scale}
        choose={(scale) => setLooks({ ...looks, scale: scale as Looks['scale'] })}
      >
        <option value="dots">dots</option>
        <option value="feet">feet</option>
      </Choice>
      {ticks
        .filter(([, , isThere]) => isThere)
        .map(([key, words]) => (
          <Tick
            key={key}
            words={words}
            value={looks[key]}
            say={(yes) => setLooks({ ...looks, [key]: yes })}
          />
        ))}
    </div>
  );
}
