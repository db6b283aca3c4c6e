import { issue, type Issue } from '../../core/issue/issue.ts';
import type { Library } from '../library/library.ts';
import { EXIT, type Arguments, type Command } from './command.ts';
import { refuse } from './read-input.ts';
import { counted, LIBRARY_OPTION, withLibrary, type LibraryRoom } from './with-library.ts';

export const assign: Command = {
  name: 'assign',
  usage:
    'LOG... --student NAME [--date 2026-05-01] [--library FOLDER]; or --all-of NAME or --nobody yes for LOG',
  purpose: 'give logs in the library to a student, with their debriefs; undo takes it back',
  options: {
    ...LIBRARY_OPTION,
    student: { value: 'whose the logs are to be', required: true },
    date: { value: 'the day of the lesson, as 2026-05-01; each keeps its own when not said' },
    'all-of': { value: 'a student all of whose logs are meant' },
    nobody: { value: "yes, for all logs that are nobody's", oneOf: ['yes'] },
  },
  minFiles: 0,
  maxFiles: Infinity,
  async run(args, output) {
    const wrong = wrongSources(args);
    if (wrong) return refuse(wrong, output);
    const { options } = args;
    return withLibrary(args, 'existing', output, async (library, room) => {
      const { id, name } = room.personNamed(library, 'student', options['student']![0]!);
      const sha256s = sourcesOf(args, library, room);
      const move = room.moveLogs(library, sha256s, { studentId: id, date: options['date']?.[0] ?? null });
      const there = new Set(sha256s).size - (move?.logs ?? 0);
      const known = there > 0 ? ` ${counted(there, 'log was', 'logs were')} there already.` : '';
      if (move) {
        const day = move.date === null ? '' : ` on ${move.date}`;
        await output.answer(
          `${counted(move.logs, 'log')} given to ${name}${day}.${known} \`halfdot undo\` takes it back.\n`,
        );
      } else await output.answer(`Nothing was moved.${known}\n`);
      return EXIT.done;
    });
  },
};

/** The logs are named, or all of a student's or of nobody's are meant: one of the three. */
function wrongSources({ files, options }: Arguments): Issue | null {
  const ways = [files.length > 0, options['all-of'] !== undefined, options['nobody'] !== undefined];
  if (ways.filter(Boolean).length === 1) return null;
  return issue('refusal', 'arguments', 'halfdot assign needs the names of logs, or --all-of, or --nobody.', {
    tip: `Use: halfdot assign ${assign.usage}`,
  });
}

function sourcesOf({ files, options }: Arguments, library: Library, room: LibraryRoom): string[] {
  const [from] = options['all-of'] ?? [];
  if (from !== undefined) return room.logsOf(library, room.personNamed(library, 'student', from).id);
  if (options['nobody']) return room.logsOf(library, null);
  return files.map((named) => room.logNamed(library, named));
}
