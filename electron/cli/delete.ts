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
      const { lessons, logs, approaches, copies, namedElsewhere } = room.holdingsOf(library, student);
      const what =
        `${student.name} with ${counted(lessons, 'lesson')}, ${counted(logs.length, 'log')} and ` +
        counted(approaches, 'approach', 'approaches');
      if (!options['confirm']) {
        await output.answer(
          `Would delete ${what}, for good.${copiesToo(copies, 'go')}${named(namedElsewhere)} --confirm yes does it.\n`,
        );
        return EXIT.done;
      }
      const deleted = room.deleteStudent(library, student);
      await output.answer(
        `Deleted ${what}.${copiesToo(deleted.copies, 'went')}${named(namedElsewhere)} ${ELSEWHERE}\n`,
      );
      for (const folder of deleted.left)
        output.message(`${folder} was moved aside by a restore, and may hold it too.`);
      if (deleted.unfinished === null) return EXIT.done;
      output.message(`halfdot: Bytes of it may still be there. ${deleted.unfinished.message} ${TO_FINISH}`);
      return EXIT.unusable;
    });
  },
};

const ELSEWHERE = 'Backups and exports made elsewhere still hold it: delete those yourself.';
const TO_FINISH = '`halfdot check` clears them away once it can.';

/** What others wrote about others is not the student's. */
function named(count: number): string {
  if (count === 0) return '';
  const where = count === 1 ? 'A note, goal or objective' : `${count} notes, goals or objectives`;
  return ` ${where} of other students ${count === 1 ? 'holds' : 'hold'} the name, and ${count === 1 ? 'stays' : 'stay'}: look through them.`;
}

function copiesToo(copies: readonly string[], go: 'go' | 'went'): string {
  if (copies.length === 0) return '';
  return ` The copies that Halfdot put beside the library ${go} too, with everybody in them: ${copies.join(', ')}.`;
}
