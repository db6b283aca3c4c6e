import { useMemo, useRef } from 'react';
import { Button } from 'react-aria-components';
import type { Dots, Sheet } from '../../core/sheet/sheet.ts';
import { utcText } from '../../core/units/utc.ts';
import { momentAtX } from '../replay/under-pointer.ts';
import { useRoom } from '../replay/use-room.ts';
import { frameOf, wholeView } from '../sheet/frame.ts';
import { SheetFigure } from '../sheet/sheet-figure.tsx';

interface Props {
  readonly sheet: Sheet;
  readonly dots: Dots;
  readonly jump: (utc: string) => void;
}

/** The whole sheet within the debrief; a press on it goes on to the replay, at that place. */
export function SheetPreview({ sheet, dots, jump }: Props) {
  const holder = useRef<HTMLDivElement>(null);
  const { widthPx } = useRoom(holder);
  const frame = useMemo(
    () => frameOf(sheet, wholeView(sheet, { widthPx, scale: dots })),
    [sheet, widthPx, dots],
  );
  return (
    <section className="preview" aria-label="Sheet">
      <div
        ref={holder}
        className="sheet-holder"
        onClick={(event) => {
          const box = event.currentTarget.getBoundingClientRect();
          const x = (event.clientX - box.left) * (frame.width / box.width);
          jump(utcText(momentAtX(frame, x, sheet.span.startS))!);
        }}
      >
        <SheetFigure frame={frame} patternId="preview" />
      </div>
      <Button className="button" onPress={() => jump(utcText(sheet.span.startS)!)}>
        Go through it in the replay
      </Button>
    </section>
  );
}
