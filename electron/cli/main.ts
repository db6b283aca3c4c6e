import { loadProgram } from './load-program.ts';

// The built file stands beside the program; see load-program.ts for why they are two.
void loadProgram(__dirname)
  .program.main(process.argv.slice(2))
  .then(() => Promise.all([process.stdout, process.stderr].map(written)))
  // By itself Node.js would clear its memory away first, which takes longer than to read a short log.
  .then(() => process.exit());

/** Waits until a stream has passed on what it was given, or never will: its reader may have gone. */
function written(stream: NodeJS.WriteStream): Promise<void> {
  return new Promise((resolve) => stream.write('', () => resolve()));
}
