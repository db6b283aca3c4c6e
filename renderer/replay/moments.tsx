import { Button } from 'react-aria-components';
import { sidedInDots } from '../../core/report/sided.ts';
import type { Sheet, SheetExcursion } from '../../core/sheet/sheet.ts';
import { clockOf, wholeWords } from '../sheet/words.ts';
import type { Moment } from './moment.ts';

interface Props {
  readonly sheet: Sheet;
  readonly moment: Moment;
}

/** What happened, in order; each goes to its moment. */
export function MomentList({ sheet, moment }: Props) {
  return (
    <section aria-label="Events">
      <h2>Events</h2>
      <ol className="moments">
        {sheet.events.map(({ kind, words, timeS }) => (
          <li key={`${kind} ${timeS}`}>
            <Button className="moment" onPress={() => moment.set(timeS)}>
              <span className="clock">{clockOf(timeS)}</span> {words}
            </Button>
          </li>
        ))}
      </ol>
    </section>
  );
}

const AXES = {
  localizer: 'Localizer',
  glidepath: 'Glidepath',
  airspeed: 'Airspeed',
  verticalSpeed: 'Vertical speed',
};

/** Every time outside of a tolerance: when, how long, how far and to which side; each goes to its worst moment. */
export function ExcursionList({ sheet, moment, dots }: Props & { readonly dots: 2 | 5 }) {
  return (
    <section aria-label="Outside">
      <h2>Outside</h2>
      {sheet.excursions.length === 0 ? (
        <p className="aside">Never outside of a tolerance that was counted.</p>
      ) : null}
      <ol className="moments">
        {sheet.excursions.map((excursion) => (
          <li key={`${excursion.axis} ${excursion.startS}`}>
            <Button className="moment" onPress={() => moment.set(excursion.peakS)}>
              <span className="clock">{clockOf(excursion.startS)}</span> {AXES[excursion.axis]}{' '}
              {depth(excursion, dots)}, {Math.max(1, Math.round(excursion.endS - excursion.startS))} s
              {excursion.prompt ? ', promptly corrected' : ''}
            </Button>
          </li>
        ))}
      </ol>
    </section>
  );
}

function depth({ axis, peak, side }: SheetExcursion, dots: 2 | 5): string {
  if (axis === 'localizer' || axis === 'glidepath') return sidedInDots(peak, axis, dots);
  return `${wholeWords(Math.abs(peak))} kt ${side}`;
}
