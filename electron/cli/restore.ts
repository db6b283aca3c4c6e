import type { Command } from './command.ts';
import { counted, doneWithout, inLibraryRoom, LIBRARY_OPTION, stoppable } from './with-library.ts';

export const restore: Command = {
  name: 'restore',
  usage: 'BACKUP [--library FOLDER]',
  purpose: 'make the library what a backup holds; what is there now is kept beside it',
  options: LIBRARY_OPTION,
  minFiles: 1,
  maxFiles: 1,
  async run(args, output) {
    const backup = args.files[0]!;
    return inLibraryRoom(args, output, (room, folder) =>
      stoppable(output.job('Restoring'), async (job) => {
        const { logs, missing, before } = await room.restore(folder, backup, room.watchBy(job));
        const kept = before === null ? '' : ` What was there before is kept in ${before}.`;
        await output.answer(`The library and ${counted(logs, 'log')} were restored from ${backup}.${kept}\n`);
        return doneWithout(missing, 'missing or damaged in the backup could not be restored', output);
      }),
    );
  },
};
