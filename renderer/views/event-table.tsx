import type { ApproachDebrief, Debrief, DebriefEvent } from '../../core/debrief/debrief.ts';
import { eventWords } from '../../core/report/event-lines.ts';
import { whole } from '../../core/units/whole.ts';
import { inDots } from './in-dots.ts';

interface Props {
  readonly approach: ApproachDebrief;
  readonly log: Debrief['log'];
  readonly dots: 2 | 5;
}

/** The moments of an approach, one a row. */
export function EventTable({ approach, log, dots }: Props) {
  return (
    <table className="events">
      <caption>
        What happened <span className="aside">{altitudeWords(approach.events, log)}</span>
      </caption>
      <thead>
        <tr>
          <th scope="col">{log.timeReference === 'utc' ? 'UTC' : 'Time'}</th>
          <th scope="col">Moment</th>
          <th scope="col" className="number">
            Miles to go
          </th>
          <th scope="col" className="number">
            Altitude, ft
          </th>
          <th scope="col" className="number">
            Localizer, dots
          </th>
          <th scope="col" className="number">
            Glidepath, dots
          </th>
          <th scope="col" className="number">
            Airspeed, kt
          </th>
        </tr>
      </thead>
      <tbody>
        {approach.events.map((event) => (
          <tr key={`${event.kind} ${event.utc}`}>
            <td>{event.utc.slice(11, 19)}</td>
            <th scope="row">{eventWords(event)}</th>
            <td className="number">{event.distanceToThresholdNm?.toFixed(1).replace('-', '−') ?? ''}</td>
            <td className="number">{event.altitudeFt === null ? '' : whole(event.altitudeFt)}</td>
            <td className="number">{needle(event.localizerFullScale, 'localizer', dots)}</td>
            <td className="number">{needle(event.glidepathFullScale, 'glidepath', dots)}</td>
            <td className="number">{event.airspeedKt === null ? '' : whole(event.airspeedKt)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function needle(fullScale: number | null, axis: 'localizer' | 'glidepath', dots: 2 | 5): string {
  return fullScale === null ? '' : inDots(fullScale, axis, dots);
}

function altitudeWords([event]: readonly DebriefEvent[], { positionError }: Debrief['log']): string {
  return event?.altitudeSource === 'indicated'
    ? 'indicated altitudes'
    : `heights from the log, ± ${Math.ceil(positionError.heightFt.median)} ft: your altimeter decides`;
}
