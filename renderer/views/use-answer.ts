import { useEffect, useState } from 'react';
import type { CallName, Input, Output } from '../../electron/bridge/calls.ts';
import { call, GoneAtHost, HostProblem } from '../state/host.ts';

interface Problem {
  /** What was asked for is not there any more; else it could not be read, and may be at another time. */
  readonly isGone: boolean;
  readonly words: string;
}

export interface Answered<T> {
  /** Null until there is one. */
  readonly answer: T | null;
  /** There is one, which may be null itself. */
  readonly isAnswered: boolean;
  /** Of the last asking; null where it was answered. */
  readonly problem: Problem | null;
  readonly again: () => void;
}

/**
 * What the host answers, asked for anew whenever the question is another or `changes` counts a change. What it answered
 * last stays until there is something newer; where nothing is asked, by null, there is no answer.
 */
export function useAnswer<N extends CallName>(
  name: N,
  input: Input<N> | null,
  changes: number,
): Answered<Output<N>> {
  const [answer, setAnswer] = useState<Output<N> | null>(null);
  const [isAnswered, setAnswered] = useState(false);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [tries, setTries] = useState(0);
  // The same for the same question; the object may be another at every drawing.
  const question = JSON.stringify(input);
  useEffect(() => {
    let isLate = false;
    const next = JSON.parse(question) as Input<N> | null;
    if (next === null) {
      setAnswer(null);
      setProblem(null);
      return undefined;
    }
    call(name, next).then(
      (given) => {
        if (isLate) return;
        setAnswer(given);
        setAnswered(true);
        setProblem(null);
      },
      (error: unknown) => {
        if (!isLate) setProblem(problemOf(error));
      },
    );
    return () => {
      isLate = true;
    };
  }, [name, question, changes, tries]);
  return { answer, isAnswered, problem, again: () => setTries(tries + 1) };
}

function problemOf(error: unknown): Problem {
  const words = error instanceof HostProblem ? error.message : 'This is a fault of the program.';
  return { isGone: error instanceof GoneAtHost, words };
}
