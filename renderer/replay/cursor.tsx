import { useSyncExternalStore } from 'react';
import type { Frame } from '../sheet/frame.ts';
import { valueAtRow } from '../sheet/rows.ts';
import type { Moment } from './moment.ts';
import { recordedRow } from './under-pointer.ts';

/** The one cursor through all panels, over the sheet and apart from it: moving it draws nothing of the sheet anew. */
export function Cursor({ frame, moment }: { readonly frame: Frame; readonly moment: Moment }) {
  const s = useSyncExternalStore(moment.subscribe, moment.get);
  const { width, height, profile, plan, strips, sheet, left, right } = frame;
  const x = frame.xOfTime(s);
  const row = recordedRow(frame, s);
  const marks =
    row === null
      ? []
      : [
          profile.y(valueAtRow(sheet.columns.altitudeFt, row)),
          plan.y(valueAtRow(sheet.columns.offsetFt, row)),
          ...strips.map(({ strip, y, top, height: tall }) => {
            const at = y(strip.valueOf(row));
            return at >= top && at <= top + tall ? at : NaN;
          }),
        ].filter((y) => !Number.isNaN(y));
  return (
    <svg className="cursor" viewBox={`0 0 ${width} ${Math.round(height)}`} aria-hidden="true">
      {x >= left && x <= right ? (
        <>
          <line x1={x} x2={x} y1={profile.top - 4} y2={height} />
          {marks.map((y, i) => (
            <circle key={i} cx={x} cy={y} r={4} />
          ))}
        </>
      ) : null}
    </svg>
  );
}
