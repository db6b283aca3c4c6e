import { whole } from '../../core/units/whole.ts';
import { useSyncExternalStore } from 'react';
import { tenths } from '../../core/report/event-lines.ts';
import { sidedInDots, type Axis } from '../../core/report/sided.ts';
import { glidepathFeetAt, localizerFeetAt } from '../../core/sheet/beam-lines.ts';
import type { Dots, Sheet } from '../../core/sheet/sheet.ts';
import type { AltitudeSource } from '../../core/track/track.ts';
import { clockOf, feetWords } from '../sheet/words.ts';
import { valueAtRow } from '../sheet/rows.ts';
import type { Moment } from './moment.ts';
import { Needles } from './needles.tsx';
import { Ruler } from './ruler.tsx';
import { recordedRow } from './under-pointer.ts';

interface Props {
  readonly sheet: Sheet;
  readonly moment: Moment;
  readonly dots: Dots;
  /** A pair of needles in place of the rulers. */
  readonly asNeedles: boolean;
}

/** Where the aircraft was at the cursor: against the path, and in numbers. */
export function NowPanel({ sheet, moment, dots, asNeedles }: Props) {
  const s = useSyncExternalStore(moment.subscribe, moment.get);
  const row = recordedRow({ sheet }, s);
  return (
    <section className="now" aria-label="At the cursor">
      <p className="clock">
        <span>{clockOf(s)}</span> <span className="aside">{sheet.zone}</span>
      </p>
      {row === null ? (
        <p>Nothing was recorded here.</p>
      ) : (
        <>
          <Deviation sheet={sheet} row={row} s={s} dots={dots} asNeedles={asNeedles} />
          <Values sheet={sheet} row={row} />
        </>
      )}
    </section>
  );
}

interface RowProps {
  readonly sheet: Sheet;
  readonly row: number;
}

interface DeviationProps extends RowProps {
  readonly s: number;
  readonly dots: Dots;
  readonly asNeedles: boolean;
}

function Deviation({ sheet, row, s, dots, asNeedles }: DeviationProps) {
  const { columns, beam } = sheet;
  const localizer = valueAtRow(columns.localizer, row);
  const glidepath = valueAtRow(columns.glidepath, row);
  const isVisual = sheet.needlesUntilS !== null && s > sheet.needlesUntilS;
  const sidewaysFt = localizerFeetAt(beam, valueAtRow(columns.localizerAlongFt, row), localizer);
  const upFt = glidepathFeetAt(beam, valueAtRow(columns.glidepathAlongFt, row), glidepath);
  if (isVisual)
    return (
      <>
        <p className="aside">Below minimums: visual. Only feet are shown.</p>
        <p>{offCentreline(valueAtRow(columns.offsetFt, row))}</p>
        {valueAtRow(columns.distanceNm, row) < 0 ? null : <p>{offPath(upFt)}</p>}
      </>
    );
  const words = (fullScale: number, feet: number, axis: Axis) =>
    Number.isNaN(fullScale) ? 'not known' : `${sidedInDots(fullScale, axis, dots)} · ${feetWords(feet)}`;
  return (
    <>
      {asNeedles ? (
        <Needles localizer={localizer} glidepath={glidepath} dots={dots} />
      ) : (
        <div className="rulers" aria-hidden="true">
          <Ruler axis="localizer" fullScale={localizer} dots={dots} />
          <Ruler axis="glidepath" fullScale={glidepath} dots={dots} />
        </div>
      )}
      <dl className="values deviations">
        <dt className="localizer">Localizer</dt>
        <dd>{words(localizer, sidewaysFt, 'localizer')}</dd>
        <dt className="glidepath">Glidepath</dt>
        <dd>{words(glidepath, upFt, 'glidepath')}</dd>
      </dl>
      <p className="aside small-print">
        Computed from position and published data. The real needles may have differed.
      </p>
    </>
  );
}

const HEIGHTS: Readonly<Record<AltitudeSource, string>> = {
  geometric: 'Height, GNSS',
  'ellipsoid-less-geoid': 'Height, GNSS',
  unnamed: 'Altitude',
  indicated: 'Altimeter',
  pressure: 'Pressure altitude',
  transponder: 'Transponder altitude',
};

/** Near the runway a pilot looks along its centreline, and not along the course. */
function offCentreline(feet: number): string {
  const words = feetWords(feet);
  return words === '0 ft' ? 'On the centreline' : `${words} ${feet > 0 ? 'right' : 'left'} of the centreline`;
}

function offPath(feet: number): string {
  if (Number.isNaN(feet)) return 'Height not known';
  const words = feetWords(feet);
  return words === '0 ft' ? 'On the path' : `${words} ${feet > 0 ? 'above' : 'below'} the path`;
}

function Values({ sheet, row }: RowProps) {
  const { columns, heights } = sheet;
  const at = (column: Float64Array | null) => (column === null ? NaN : valueAtRow(column, row));
  const geometric = `${whole(at(columns.altitudeFt))} ft`;
  const values: readonly (readonly [string, number, string])[] = [
    ['Miles to go', at(columns.distanceNm), `${tenths(at(columns.distanceNm))} NM`],
    [
      'Altimeter',
      heights.source === 'indicated' ? NaN : at(columns.indicatedFt),
      `${whole(at(columns.indicatedFt))} ft`,
    ],
    [HEIGHTS[heights.source], at(columns.altitudeFt), geometric],
    [
      columns.airspeedHalfKt > 0 ? 'Airspeed, estimated' : 'Airspeed',
      at(columns.airspeedKt),
      `${whole(at(columns.airspeedKt))} kt`,
    ],
    ['Groundspeed', at(columns.groundspeedKt), `${whole(at(columns.groundspeedKt))} kt`],
    [
      'Vertical speed',
      at(columns.verticalSpeedFpm),
      `${whole(Math.round(at(columns.verticalSpeedFpm) / 10) * 10)} ft/min`,
    ],
  ];
  return (
    <dl className="values">
      {values
        .filter(([, value]) => !Number.isNaN(value))
        .map(([words, , text]) => (
          <div key={words}>
            <dt>{words}</dt>
            <dd>{text}</dd>
          </div>
        ))}
    </dl>
  );
}
