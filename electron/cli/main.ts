import { EXIT } from './command.ts';
import { processOutput } from './output.ts';
import { run } from './run.ts';

const output = processOutput();
try {
  process.exitCode = await run(process.argv.slice(2), output);
} catch (error) {
  output.message(
    `halfdot: this is a fault of the program, not of your file. ${(error as Error).stack ?? error}`,
  );
  process.exitCode = EXIT.ourFault;
}
