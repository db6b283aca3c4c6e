import type { ApproachDebrief, Debrief } from '../../core/debrief/debrief.ts';
import { altitudeWords, zoneOf } from '../../core/report/debrief-text.ts';
import { eventWords, tenths } from '../../core/report/event-lines.ts';
import { sidedInDots } from '../../core/report/sided.ts';
import { whole } from '../../core/units/whole.ts';

interface Props {
  readonly approach: ApproachDebrief;
  readonly log: Debrief['log'];
  readonly dots: 2 | 5;
}

const NUMBERS = ['Miles to go', 'Altitude, ft', 'Localizer, dots', 'Glidepath, dots', 'Airspeed, kt'];

/** The moments of an approach, one a row. */
export function EventTable({ approach, log, dots }: Props) {
  return (
    <table className="events">
      <caption>
        What happened{' '}
        <span className="aside">
          {zoneOf(log)}; {altitudeWords(approach.events, log)}
        </span>
      </caption>
      <thead>
        <tr>
          <th scope="col">Time</th>
          <th scope="col">Moment</th>
          {NUMBERS.map((words) => (
            <th key={words} scope="col" className="number">
              {words}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {approach.events.map((event) => (
          <tr key={`${event.kind} ${event.utc}`}>
            <td>{event.utc.slice(11, 19)}</td>
            <th scope="row">{eventWords(event)}</th>
            <td className="number">
              {event.distanceToThresholdNm === null ? '' : tenths(event.distanceToThresholdNm)}
            </td>
            <td className="number">{event.altitudeFt === null ? '' : whole(event.altitudeFt)}</td>
            <td className="number">{sidedInDots(event.localizerFullScale, 'localizer', dots)}</td>
            <td className="number">{sidedInDots(event.glidepathFullScale, 'glidepath', dots)}</td>
            <td className="number">{event.airspeedKt === null ? '' : whole(event.airspeedKt)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
