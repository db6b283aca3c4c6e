import { loadProgram } from './load-program.ts';

// The built file stands beside the program; see load-program.ts for why they are two.
void loadProgram(__dirname).program.main(process.argv.slice(2));
