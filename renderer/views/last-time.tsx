import { Button } from 'react-aria-components';
import type { Flight } from '../state/app-state.ts';
import type { Session } from '../state/session.ts';

/** Says that what was stated about a log last time is stated again, and offers the other way; nothing is lost by it. */
export function LastTime({ flight, session }: { readonly flight: Flight; readonly session: Session }) {
  if (flight.lastTime === null) return null;
  const { isTaken } = flight.lastTime;
  return (
    <p className="last-time" role="status">
      {isTaken
        ? 'What you stated last time was taken over.'
        : flight.kept
          ? 'Opened as it was kept, without what you stated last time.'
          : 'Begun afresh, without what you stated last time.'}{' '}
      <Button className="button" onPress={() => void session.swapLastTime(flight.id)}>
        {isTaken ? 'Start afresh' : 'Take it over'}
      </Button>
    </p>
  );
}
