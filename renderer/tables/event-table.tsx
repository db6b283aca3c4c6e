import type { ApproachDebrief, Debrief } from '../../core/debrief/debrief.ts';
import { altitudeWords, zoneOf } from '../../core/report/debrief-text.ts';
import { eventWords, tenths } from '../../core/report/event-lines.ts';
import { dayAndClock } from '../../core/report/plain-words.ts';
import { sidedInDots } from '../../core/report/sided.ts';
import { whole } from '../../core/units/whole.ts';
import type { Dots } from '../../core/sheet/sheet.ts';

interface Props {
  readonly approach: ApproachDebrief;
  readonly log: Debrief['log'];
  readonly dots: Dots;
  /** Goes to a moment in the replay; nothing can be pressed without. */
  readonly jump?: (utc: string) => void;
}

const NUMBERS = ['Miles to go', 'Altitude, ft', 'Localizer, dots', 'Glidepath, dots', 'Airspeed, kt'];

/** The moments of an approach, one a row. */
export function EventTable({ approach, log, dots, jump }: Props) {
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
            <td>
              <Time utc={event.utc} jump={jump} />
            </td>
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

/** The clock time of a moment; pressed, it goes there. */
function Time({ utc, jump }: { readonly utc: string; readonly jump: Props['jump'] | undefined }) {
  const { clock } = dayAndClock(utc);
  if (!jump) return clock;
  return (
    <button
      type="button"
      className="jump"
      aria-label={`Show ${clock} in the replay`}
      onClick={() => jump(utc)}
    >
      {clock}
    </button>
  );
}
