import { EXIT } from './command.ts';
import { processOutput } from './output.ts';
import { run } from './run.ts';

/** Runs the process's command line and sets its exit status; resolves when all was written. */
export async function main(words: readonly string[], output = processOutput()): Promise<void> {
  try {
    process.exitCode = await run(words, output);
  } catch (error) {
    output.message(
      `halfdot: this is a fault of the program, not of your file. ${(error as Error).stack ?? error}`,
    );
    process.exitCode = EXIT.ourFault;
  }
  await output.written();
}
