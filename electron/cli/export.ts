import type { Command } from './command.ts';
import { counted, doneWithout, LIBRARY_OPTION, stoppable, withLibrary } from './with-library.ts';

const YES_NO = ['yes', 'no'] as const;

export const exportLibrary: Command = {
  name: 'export',
  usage: 'FOLDER [--pseudonyms yes] [--logs yes|no] [--library FOLDER]',
  purpose: 'write the whole library in the open, for `halfdot import --from` or any other program',
  options: {
    ...LIBRARY_OPTION,
    pseudonyms: {
      value: 'yes, for people as "Student 1", without notes, goals and other words, and without the logs',
      oneOf: YES_NO,
    },
    logs: { value: 'whether the logs go with it: yes, or no with pseudonyms, when not said', oneOf: YES_NO },
  },
  minFiles: 1,
  maxFiles: 1,
  async run({ files, options, ...args }, output) {
    const target = files[0]!;
    const pseudonyms = options['pseudonyms']?.[0] === 'yes';
    const logs = (options['logs']?.[0] ?? (pseudonyms ? 'no' : 'yes')) === 'yes';
    return withLibrary({ files, options, ...args }, 'existing', output, (library, room) =>
      stoppable(output.job('Exporting'), async (job) => {
        const asked = { pseudonyms, logs };
        const { rows, missing } = await room.exportLibrary(library, target, asked, room.watchBy(job));
        await output.answer(`${counted(rows, 'entry', 'entries')} written to ${target}.\n`);
        if (pseudonyms) await output.answer(`${ofNames(logs)}\n`);
        return doneWithout(missing, 'missing or damaged in the library could not be exported', output);
      }),
    );
  },
};

/** What whoever hands it on has to know. */
function ofNames(hasLogs: boolean): string {
  const people =
    'People, aircraft and logs have other names, and no list of who is whom is kept. ' +
    'Notes, goals and other words are left out. Dates, times and places stay.';
  const logs = hasLogs
    ? 'The logs are as they were recorded: their lines may hold a name. Look into them before you hand them on.'
    : 'The logs are left out, since their lines may hold a name. `--logs yes` takes them along.';
  return `${people}\n${logs}`;
}
