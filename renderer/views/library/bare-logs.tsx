import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Output } from '../../../electron/bridge/calls.ts';
import { call } from '../../state/host.ts';
import type { Session } from '../../state/session.ts';

/** Logs in which no approach was found: they stand in no list of approaches, and are somebody's all the same. */
export function BareLogs({ changes, session }: { readonly changes: number; readonly session: Session }) {
  const [logs, setLogs] = useState<Output<'logsWithoutApproach'>>([]);
  useEffect(() => {
    call('logsWithoutApproach', {}).then(setLogs, session.library.tell);
  }, [changes, session]);
  if (logs.length === 0) return null;
  const many = logs.length === 1 ? '1 log holds' : `${logs.length} logs hold`;
  return (
    <details className="bare-logs">
      <summary>{many} no approach at a facility that is known</summary>
      <ul className="plain">
        {logs.map(({ sha256, fileName, date, student, lessonId }) => (
          <li key={sha256}>
            {fileName}{' '}
            <Button
              className="link"
              onPress={() => session.store.dispatch({ do: 'lesson', lessonId })}
            >{`${student ?? 'nobody yet'}, ${date}`}</Button>
          </li>
        ))}
      </ul>
    </details>
  );
}
