import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gateTo } from '../bridge/gate.ts';
import { GivenFiles } from '../services/given-files.ts';
import { LibraryHost } from '../services/library-host.ts';
import { libraryFolder } from '../services/library-folder.ts';
import { Samples } from '../services/samples.ts';
import { servicesOf } from '../services/services.ts';
import { userFolder } from '../services/user-folder.ts';
import { browserFor } from './browser.ts';
import { serveLoopback } from './server.ts';

/** Serves the app to a browser on this machine until its page is closed or it is stopped. */
const dist = fileURLToPath(new URL('.', import.meta.url));
const given = new GivenFiles();
given.add(
  process.argv
    .slice(2)
    .filter((word) => !word.startsWith('--'))
    .map((path) => resolve(path)),
);
const folder = userFolder(process.env, process.platform);
const library = new LibraryHost(libraryFolder(process.argv, folder));
const services = servicesOf('browser', {
  samples: new Samples(join(dist, '..', 'samples')),
  given,
  userFolder: folder,
  library,
});
const loopback = await serveLoopback({
  gate: gateTo(services),
  page: join(dist, 'page'),
  ended: () => void end('The page was closed.'),
});

async function end(why: string): Promise<void> {
  process.stderr.write(`${why}\n`);
  await loopback.close();
  await library.end();
  process.exit(0);
}
process.on('SIGINT', () => void end('Stopped.'));
process.on('SIGTERM', () => void end('Stopped.'));

const browser = process.argv.includes('--no-browser')
  ? null
  : browserFor(process.env, process.platform, existsSync);
// Why it is not the desktop window, in the words of who started this.
const why = process.argv.find((word) => word.startsWith('--why='))?.slice('--why='.length);
const because = why ? `${why} ` : '';
process.stdout.write(`${loopback.address}\n`);
if (browser === null) {
  process.stderr.write(`${because}Open this address in a browser on this machine. Ctrl-C ends it.\n`);
} else {
  process.stderr.write(`${because}${browser.why} Ctrl-C ends it.\n`);
  const [command, ...words] = browser.command(loopback.address);
  spawn(command!, words, { detached: true, stdio: 'ignore' })
    .on('error', () => process.stderr.write('It could not be started: open the address yourself.\n'))
    .unref();
}
