import { tenths } from '../../core/report/event-lines.ts';
import { sidedInDots } from '../../core/report/sided.ts';
import type { Sheet } from '../../core/sheet/sheet.ts';
import { whole } from '../../core/units/whole.ts';
import { clockOf } from '../sheet/words.ts';
import type { Dots } from '../../core/sheet/sheet.ts';
import { pathRows, type PathRow } from './path-rows.ts';

interface Column {
  readonly head: string;
  readonly words: (row: PathRow) => string;
}

/** The sheet in numbers, for who cannot see it or wants to reckon with it. */
export function PathTable({ sheet, dots }: { readonly sheet: Sheet; readonly dots: Dots }) {
  const columns = columnsOf(sheet, dots);
  return (
    <table className="path">
      <caption>
        At each moment and each half mile <span className="aside">{sheet.zone}</span>
      </caption>
      <thead>
        <tr>
          <th scope="col">Time</th>
          <th scope="col">Moment</th>
          {columns.map(({ head }) => (
            <th key={head} scope="col" className="number">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {pathRows(sheet).map((row, i) => (
          <tr key={`${i} ${row.timeS}`} {...(row.words === null ? {} : { className: 'moment' })}>
            <td>{clockOf(row.timeS)}</td>
            <th scope="row">{row.words ?? `${tenths(row.distanceNm)} NM`}</th>
            {columns.map(({ head, words }) => (
              <td key={head} className="number">
                {words(row)}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function columnsOf({ columns: { indicatedFt, airspeedKt, airspeedHalfKt } }: Sheet, dots: Dots): Column[] {
  const airspeed = airspeedHalfKt > 0 ? 'Airspeed, estimated, kt' : 'Airspeed, kt';
  return [
    { head: 'Miles to go', words: ({ distanceNm }) => tenths(distanceNm) },
    { head: 'Height, ft', words: ({ altitudeFt }) => wholeOr(altitudeFt) },
    ...(indicatedFt ? [{ head: 'Altimeter, ft', words: (row: PathRow) => wholeOr(row.indicatedFt) }] : []),
    { head: 'Off the path, ft', words: ({ aboveFt }) => (aboveFt === null ? '' : offPath(aboveFt)) },
    { head: 'Localizer, dots', words: ({ localizer }) => sidedInDots(localizer, 'localizer', dots) },
    { head: 'Glidepath, dots', words: ({ glidepath }) => sidedInDots(glidepath, 'glidepath', dots) },
    ...(airspeedKt ? [{ head: airspeed, words: (row: PathRow) => wholeOr(row.airspeedKt) }] : []),
    { head: 'Vertical speed, ft/min', words: ({ verticalSpeedFpm }) => wholeOr(verticalSpeedFpm) },
  ];
}

function wholeOr(value: number): string {
  return Number.isNaN(value) ? '' : whole(value);
}

function offPath(aboveFt: number): string {
  const feet = whole(Math.abs(aboveFt));
  return feet === '0' ? 'on path' : `${aboveFt < 0 ? 'low' : 'high'} ${feet}`;
}
