import type { Command } from './command.ts';
import { counted, doneWithout, LIBRARY_OPTION, stoppable, withLibrary } from './with-library.ts';

export const backup: Command = {
  name: 'backup',
  usage: 'FOLDER [--library FOLDER]',
  purpose: 'copy the library with its logs into a new folder; others may go on using it meanwhile',
  options: LIBRARY_OPTION,
  minFiles: 1,
  maxFiles: 1,
  async run(args, output) {
    const target = args.files[0]!;
    return withLibrary(args, 'existing', output, (library, room) =>
      stoppable(output.job('Copying'), async (job) => {
        const { logs, missing } = await room.backUp(library, target, room.watchBy(job));
        await output.answer(`The library and ${counted(logs, 'log')} of it were copied to ${target}.\n`);
        return doneWithout(missing, 'missing or damaged in the library could not be copied whole', output);
      }),
    );
  },
};
