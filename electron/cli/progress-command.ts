import { EXIT, type Command } from './command.ts';
import { LIBRARY_OPTION, stoppable, withLibrary } from './with-library.ts';

export const progress: Command = {
  name: 'progress',
  usage: '--student NAME [--format text|json|csv] [--library FOLDER]',
  purpose: 'tell how a student goes on from lesson to lesson, and what to practise',
  options: {
    ...LIBRARY_OPTION,
    student: { value: 'whose lessons are meant', required: true },
    format: { value: 'text, json or csv', oneOf: ['text', 'json', 'csv'] },
  },
  minFiles: 0,
  maxFiles: 0,
  async run(args, output) {
    const { options } = args;
    return withLibrary(args, 'existing', output, (library, room) =>
      stoppable(output.job('Reading debriefs'), async (job) => {
        const student = room.personNamed(library, 'student', options['student']![0]!);
        // Loaded when it is asked for: no other command does with it.
        const { progressRecord } = await import('./progress-record.ts');
        const format = options['format']?.[0] ?? 'text';
        await output.answer(await progressRecord(library, room, student, format, room.watchBy(job)));
        return EXIT.done;
      }),
    );
  },
};
