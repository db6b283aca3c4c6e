import { useRef, useState } from 'react';

/** One job at a time: what is asked for while one is under way, as by a second click, is not done. */
export function useOnce() {
  const [isBusy, setBusy] = useState(false);
  // What is drawn lags behind a second click.
  const isUnderWay = useRef(false);
  const doJob = async (job: () => Promise<unknown>) => {
    if (isUnderWay.current) return;
    isUnderWay.current = true;
    setBusy(true);
    try {
      await job();
    } finally {
      isUnderWay.current = false;
      setBusy(false);
    }
  };
  return { isBusy, once: (job: () => Promise<unknown>) => void doJob(job) };
}
