import type { Job } from '../../core/log/log.ts';

/** Where a command writes: the answer to one, progress and issues to the other. */
export interface Output {
  /** Resolves when the text is taken; false when nobody reads any more. */
  answer(text: string): Promise<boolean>;
  message(line: string): void;
  /** A job that shows its progress under this name once it has taken a second. */
  job(label: string): Job;
}

export interface Arguments {
  readonly files: readonly string[];
  /** Values by option name, in the order given. */
  readonly options: Readonly<Record<string, readonly string[]>>;
}

/** Exit status: 0 done, 2 unusable input (one clear sentence, nothing written), 1 our own fault. */
export const EXIT = { done: 0, ourFault: 1, unusable: 2 } as const;
export type ExitStatus = (typeof EXIT)[keyof typeof EXIT];

export interface Option {
  /** What the value is, as the end of "needs a value: …". */
  readonly value: string;
  readonly required?: true;
  readonly repeatable?: true;
  /** The values that it takes, where they are few. */
  readonly oneOf?: readonly string[];
}

export interface Command {
  readonly name: string;
  /** How it is called, after the command's own name. */
  readonly usage: string;
  /** What it is for, in one line. */
  readonly purpose: string;
  /** By name without dashes; every option takes a value. */
  readonly options: Readonly<Record<string, Option>>;
  readonly minFiles: number;
  readonly maxFiles: number;
  run(args: Arguments, output: Output): Promise<ExitStatus>;
}
