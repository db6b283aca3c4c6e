import { Button } from 'react-aria-components';
import type { Move } from '../../../electron/bridge/library-calls.ts';
import type { Session } from '../../state/session.ts';

/** The last time that logs were given to somebody, and the way back. */
export function LastMove({ move, session }: { readonly move: Move | null; readonly session: Session }) {
  if (move === null) return null;
  return (
    <p className="last-move aside" role="status">
      {words(move)}{' '}
      <Button className="small" onPress={() => void session.library.change('undoMove', {})}>
        Undo it
      </Button>
    </p>
  );
}

function words({ logs, student, date, movedUtc }: Move): string {
  const many = logs === 1 ? '1 log' : `${logs} logs`;
  const on = date === null ? '' : `, lesson of ${date}`;
  const when = new Date(movedUtc).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
  return `${when}: ${many} given to ${student ?? 'nobody'}${on}.`;
}
