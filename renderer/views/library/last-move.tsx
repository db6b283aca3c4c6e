import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Move } from '../../../electron/bridge/library-calls.ts';
import type { Session } from '../../state/session.ts';

/** The last time that logs were given to somebody, and the way back. */
export function LastMove({ move, session }: { readonly move: Move | null; readonly session: Session }) {
  const [isBusy, setBusy] = useState(false);
  if (move === null) return null;
  const undo = async () => {
    setBusy(true);
    await session.library.change('undoMove', { id: move.id });
    setBusy(false);
  };
  return (
    <p className="last-move aside" role="status">
      {words(move)}{' '}
      <Button className="small" isDisabled={isBusy} onPress={() => void undo()}>
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
