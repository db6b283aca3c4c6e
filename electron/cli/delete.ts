import { EXIT, type Command } from './command.ts';
import { counted, LIBRARY_OPTION, withLibrary } from './with-library.ts';

export const deleteStudent: Command = {
  name: 'delete',
  usage: '--student NAME [--confirm yes] [--library FOLDER]',
  purpose: 'delete a student with everything that the library holds of them, beyond recovery',
  options: {
    ...LIBRARY_OPTION,
    student: { value: 'whom to delete', required: true },
    confirm: { value: 'yes; without it, it is only said what would go', oneOf: ['yes'] },
  },
  minFiles: 0,
  maxFiles: 0,
  async run(args, output) {
    const { options } = args;
    return withLibrary(args, 'existing', output, async (library, room) => {
      const student = room.personNamed(library, 'student', options['student']![0]!);
      const { lessons, logs, approaches } = room.holdingsOf(library, student);
      const what =
        `${student.name} with ${counted(lessons, 'lesson')}, ${counted(logs.length, 'log')} and ` +
        counted(approaches, 'approach', 'approaches');
      if (!options['confirm']) {
        await output.answer(`Would delete ${what}, for good. --confirm yes does it.\n`);
        return EXIT.done;
      }
      const { isErased, left } = room.deleteStudent(library, student);
      await output.answer(
        `Deleted ${what}. Backups and exports made elsewhere still hold it: delete those yourself.\n`,
      );
      if (!isErased)
        output.message(
          'Another program is reading the library: bytes may stay in its files until that has ended and any command was run.',
        );
      for (const folder of left)
        output.message(`${folder} was moved aside by a restore, and may hold it too.`);
      return EXIT.done;
    });
  },
};
