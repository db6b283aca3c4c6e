import { useEffect, useState } from 'react';
import type { Outcome } from '../../../core/issue/issue.ts';
import type { AskedBriefing, BriefingMade } from '../../worker/protocol.ts';

/** What the worker makes of what is typed; that of what was typed before stays until it has answered. */
export function useBriefing(
  asked: AskedBriefing,
  make: (asked: AskedBriefing) => Promise<Outcome<BriefingMade> | null>,
): Outcome<BriefingMade> | null {
  const [made, setMade] = useState<Outcome<BriefingMade> | null>(null);
  // The same for the same question; the object is another at every drawing.
  const question = JSON.stringify(asked);
  useEffect(() => {
    let isLate = false;
    void make(JSON.parse(question) as AskedBriefing).then((next) => {
      if (!isLate) setMade(next);
    });
    return () => {
      isLate = true;
    };
  }, [question, make]);
  return made;
}
