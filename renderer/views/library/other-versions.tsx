import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { Output } from '../../../electron/bridge/calls.ts';
import { call } from '../../state/host.ts';
import type { Session } from '../../state/session.ts';

type Made = Output<'recomputeLibrary'>;

/** Debriefs that another version made: they are made anew when that is asked for, and what reads otherwise is told. */
export function OtherVersions({ count, session }: { readonly count: number; readonly session: Session }) {
  const [isBusy, setBusy] = useState(false);
  const [made, setMade] = useState<Made | null>(null);
  if (count === 0 && made === null) return null;
  const make = async () => {
    setBusy(true);
    setMade(await session.library.recompute());
    setBusy(false);
  };
  const many = count === 1 ? '1 debrief was' : `${count} debriefs were`;
  return (
    <div className="other-versions" aria-busy={isBusy}>
      {count === 0 ? null : (
        <div className="row">
          <span>{`${many} made by another version of Halfdot.`}</span>
          <Button className="button" isDisabled={isBusy} onPress={() => void make()}>
            Make anew
          </Button>
          {isBusy ? (
            <Button className="button" onPress={() => void call('stopLibraryWork', {})}>
              Stop
            </Button>
          ) : null}
        </div>
      )}
      {made === null ? null : <Told made={made} putAway={() => setMade(null)} />}
    </div>
  );
}

function Told({ made, putAway }: { readonly made: Made; readonly putAway: () => void }) {
  const { madeAnew, changed, left, isStopped } = made;
  const same =
    changed.length === 0 ? 'None of them reads otherwise.' : `${changed.length} read otherwise now.`;
  return (
    <div className="boxed">
      <p role="status">
        {madeAnew === 1 ? '1 debrief was' : `${madeAnew} debriefs were`} made anew. {same}
        {isStopped ? ' Stopped before the others.' : ''}
      </p>
      <ul className="plain">
        {changed.map(({ name, lines }) => (
          <li key={name}>
            {name}
            {lines.map((line) => (
              <span key={line} className="aside beside">
                {line}
              </span>
            ))}
          </li>
        ))}
        {left.map((sentence) => (
          <li key={sentence} className="wrong">
            {sentence}
          </li>
        ))}
      </ul>
      <Button className="button" onPress={putAway}>
        Close
      </Button>
    </div>
  );
}
