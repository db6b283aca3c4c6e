import { Button } from 'react-aria-components';
import type { Dots, Sheet } from '../../core/sheet/sheet.ts';
import { clockOf, excursionWords } from '../sheet/words.ts';
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

/** Every time outside of a tolerance: when, how far, to which side and how long; each goes to its worst moment. */
export function ExcursionList({ sheet, moment, dots }: Props & { readonly dots: Dots }) {
  return (
    <section aria-label="Outside">
      <h2>Outside</h2>
      {sheet.excursions.length > 0 ? null : (
        <p className="aside">
          {sheet.isCounted
            ? 'Never outside of a tolerance that was counted.'
            : 'No tolerance was counted here.'}
        </p>
      )}
      <ol className="moments">
        {sheet.excursions.map((excursion) => (
          <li key={`${excursion.criterionId} ${excursion.startS}`}>
            <Button className="moment" onPress={() => moment.set(excursion.peakS)}>
              <span className="clock">{clockOf(excursion.startS)}</span> {excursion.title}:{' '}
              {excursionWords(excursion, dots)}
            </Button>
          </li>
        ))}
      </ol>
    </section>
  );
}
