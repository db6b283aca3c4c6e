import { loadProgram } from './load-program.ts';

// The built file stands beside the program; see load-program.ts for why they are two.
void loadProgram(__dirname)
  .program.main(process.argv.slice(2))
  // By itself Node.js would clear its memory away first, which takes longer than to read a short log.
  .then(() => process.exit());
