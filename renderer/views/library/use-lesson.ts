import { useEffect, useState } from 'react';
import type { LessonPage } from '../../../electron/bridge/library-calls.ts';
import { call, GoneAtHost, HostProblem } from '../../state/host.ts';

interface Problem {
  /** It is not in the library any more; else it could not be read, and may be at another time. */
  readonly isGone: boolean;
  readonly words: string;
}

/** A lesson as it is kept, asked for anew whenever something was changed; what was read last stays when that fails. */
export function useLesson(id: string, changes: number) {
  const [page, setPage] = useState<LessonPage | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [tries, setTries] = useState(0);
  useEffect(() => {
    let isLate = false;
    call('lesson', { id }).then(
      (read) => {
        if (isLate) return;
        setPage(read);
        setProblem(null);
      },
      (error: unknown) => {
        if (!isLate) setProblem(problemOf(error));
      },
    );
    return () => {
      isLate = true;
    };
  }, [id, changes, tries]);
  return { page, problem, again: () => setTries(tries + 1) };
}

function problemOf(error: unknown): Problem {
  const words = error instanceof HostProblem ? error.message : 'This is a fault of the program.';
  return { isGone: error instanceof GoneAtHost, words };
}
