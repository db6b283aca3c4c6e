import { realpathSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { EXIT, type Command } from './command.ts';

/** Opens the app: a process of its own, so that the commands do not carry its weight. */
export const app: Command = {
  name: 'app',
  usage: '[LOG...] [--browser yes|no]',
  purpose: 'open the app, in a browser on this machine; nothing leaves it',
  options: {
    browser: { value: 'no, to print the address alone', oneOf: ['yes', 'no'] },
  },
  minFiles: 0,
  maxFiles: Infinity,
  async run({ files, options }, output) {
    // Not at the top: the other commands would load it too, a tenth of the time that they take. Nor by an import here:
    // the program runs as a script of its own, which has none (see load-program.ts).
    const { spawn } = process.getBuiltinModule('node:child_process');
    const words = files.map((file) => resolve(file));
    if (options['browser']?.[0] === 'no') words.push('--no-browser');
    const child = spawn(
      process.execPath,
      [join(dirname(realpathSync(process.argv[1]!)), 'app.mjs'), ...words],
      { stdio: 'inherit' },
    );
    const code = await new Promise<number | null>((ended) => {
      // Ctrl-C reaches both: the app ends by itself, and this waits for it.
      process.on('SIGINT', () => {});
      child.on('exit', ended);
      child.on('error', () => ended(EXIT.ourFault));
    });
    if (code !== 0) output.message('halfdot: the app did not end as it should.');
    return code === 0 ? EXIT.done : EXIT.ourFault;
  },
};
