import { EXIT, type Command } from './command.ts';
import { counted, LIBRARY_OPTION, stoppable, withLibrary } from './with-library.ts';

export const check: Command = {
  name: 'check',
  usage: '[--library FOLDER]',
  purpose: 'look at every part of the library, each log and each debrief, and say what is wrong',
  options: LIBRARY_OPTION,
  minFiles: 0,
  maxFiles: 0,
  async run(args, output) {
    return withLibrary(args, 'existing', output, (library, room) =>
      stoppable(output.job('Checking'), async (job) => {
        const { logs, debriefs, faults, remarks } = await room.checkLibrary(library, room.watchBy(job));
        for (const remark of remarks) output.message(`Note: ${remark}`);
        for (const fault of faults) output.message(`halfdot: ${fault}`);
        const looked = `${counted(logs, 'log')} and ${counted(debriefs, 'debrief')} were checked`;
        const found = faults.length === 0 ? 'all is well' : `${counted(faults.length, 'fault')} found`;
        await output.answer(`${looked}: ${found}.\n`);
        return faults.length === 0 ? EXIT.done : EXIT.unusable;
      }),
    );
  },
};
