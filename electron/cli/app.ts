import { realpathSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { EXIT, type Command } from './command.ts';
import { LIBRARY_OPTION } from './with-library.ts';
import { chooseOpening, findRuntime } from './window-runtime.ts';

/** Opens the app: a process of its own, so that the commands do not carry its weight. */
export const app: Command = {
  name: 'app',
  usage: '[LOG...] [--browser yes|no] [--library FOLDER]',
  purpose: 'open the app, in a window of its own or a browser on this machine; nothing leaves it',
  options: {
    ...LIBRARY_OPTION,
    browser: {
      value: 'yes, to open a browser also where the window could; no, to print the address alone',
      oneOf: ['yes', 'no'],
    },
  },
  minFiles: 0,
  maxFiles: Infinity,
  async run({ files, options }, output) {
    // Not at the top: the other commands would load it too, a tenth of the time that they take. Nor by an import here:
    // the program runs as a script of its own, which has none (see load-program.ts).
    const { spawn } = process.getBuiltinModule('node:child_process');
    const dist = dirname(realpathSync(process.argv[1]!));
    const browser = options['browser']?.[0];
    const opening = chooseOpening(browser, findRuntime(join(dist, '..')), process.env, process.platform);
    const words = files.map((file) => resolve(file));
    const library = options['library']?.[0];
    if (library) words.push(`--library=${resolve(library)}`);
    if (browser === 'no') words.push('--no-browser');
    if (opening.why !== null) words.push(`--why=${opening.why}`);
    if (opening.in === 'window') output.message('Opened in a window of its own.');
    const child =
      opening.in === 'window'
        ? spawn(opening.runtime, [join(dist, 'window'), ...words], {
            stdio: 'inherit',
            // With it the runtime is a Node.js without windows.
            env: { ...process.env, ELECTRON_RUN_AS_NODE: undefined },
          })
        : spawn(process.execPath, [join(dist, 'app.mjs'), ...words], { stdio: 'inherit' });
    const code = await new Promise<number | null>((ended) => {
      // Ctrl-C reaches both: the app ends by itself, and this waits for it.
      process.on('SIGINT', () => {});
      child.on('exit', ended);
      child.on('error', () => ended(EXIT.ourFault));
    });
    if (code !== 0) output.message('halfdot: the app did not end as it should.');
    if (code !== 0 && opening.in === 'window')
      output.message('`halfdot app --browser yes` opens it in a browser.');
    return code === 0 ? EXIT.done : EXIT.ourFault;
  },
};
