import type { Command } from './command.ts';
import { counted, doneWithout, LIBRARY_OPTION, stoppable, withLibrary } from './with-library.ts';

export const exportLibrary: Command = {
  name: 'export',
  usage: 'FOLDER [--library FOLDER]',
  purpose: 'write the whole library in the open, for `halfdot import --from` or any other program',
  options: LIBRARY_OPTION,
  minFiles: 1,
  maxFiles: 1,
  async run(args, output) {
    const target = args.files[0]!;
    return withLibrary(args, 'existing', output, (library, room) =>
      stoppable(output.job('Exporting'), async (job) => {
        const { rows, missing } = await room.exportLibrary(library, target, room.watchBy(job));
        await output.answer(`${counted(rows, 'entry', 'entries')} written to ${target}.\n`);
        return doneWithout(missing, 'missing or damaged in the library could not be exported', output);
      }),
    );
  },
};
