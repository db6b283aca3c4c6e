import type { ExitStatus, Output } from '../../../electron/cli/command.ts';
import { run } from '../../../electron/cli/run.ts';

export interface Said {
  readonly status: ExitStatus;
  readonly answer: string;
  readonly messages: readonly string[];
}

/** Runs a command line in this process and catches what it says. */
export async function runCommand(...words: string[]): Promise<Said> {
  const answers: string[] = [];
  const messages: string[] = [];
  const output: Output = {
    answer: async (text) => {
      answers.push(text);
      return true;
    },
    message: (line) => void messages.push(line),
    job: () => ({ progress: () => {}, cancelled: () => false }),
  };
  const status = await run(words, output);
  return { status, answer: answers.join(''), messages };
}
