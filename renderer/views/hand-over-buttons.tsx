import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Session } from '../state/session.ts';
import { usePrint } from './use-print.ts';

const fetchPrint = () => import('./print-hand-over.tsx');

interface Props {
  readonly session: Session;
  readonly flightId: string;
  /** The one that is shown; null where none was flown. */
  readonly approach: number | null;
}

/** What can be taken away from a debrief: a file each, or paper. */
export function HandOverButtons({ session, flightId, approach }: Props) {
  const [isBusy, setBusy] = useState(false);
  useEffect(() => {
    // Once there is something to be printed, so that it can be also when the host was ended.
    fetchPrint().catch(() => {});
  }, []);
  const during = (work: () => Promise<void>) => () => {
    setBusy(true);
    void work().finally(() => setBusy(false));
  };
  const print = async () => {
    const handOver = await session.handOver(flightId);
    if (handOver === null) return;
    const { printHandOver } = await fetchPrint();
    printHandOver(handOver, session.store.state().notes.settings.dots);
  };
  usePrint(() => !isBusy && during(print)());
  const save = (what: Parameters<Session['save']>[1]) =>
    during(() => session.save(flightId, what, approach ?? 0));
  return (
    <div className="row hand-over-buttons" role="group" aria-label="Hand over" aria-busy={isBusy}>
      <Button className="button" isDisabled={isBusy} onPress={save('page')}>
        Save the page
      </Button>
      {approach === null ? null : (
        <>
          <Button className="button" isDisabled={isBusy} onPress={save('deviations')}>
            Save deviations as CSV
          </Button>
          <Button className="button" isDisabled={isBusy} onPress={save('map')}>
            Save as GeoJSON
          </Button>
        </>
      )}
      <Button className="button" isDisabled={isBusy} onPress={during(print)}>
        Print
      </Button>
    </div>
  );
}
