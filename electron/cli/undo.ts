import { issue } from '../../core/issue/issue.ts';
import { EXIT, type Command } from './command.ts';
import { refuse } from './read-input.ts';
import { counted, LIBRARY_OPTION, withLibrary } from './with-library.ts';

export const undo: Command = {
  name: 'undo',
  usage: '[--library FOLDER]',
  purpose: 'take back the last time that logs were given to somebody; once more for the time before',
  options: LIBRARY_OPTION,
  minFiles: 0,
  maxFiles: 0,
  async run(args, output) {
    return withLibrary(args, 'existing', output, async (library, room) => {
      const moved = room.lastMove(library);
      const undone = room.undoMove(library);
      if (!moved || !undone)
        return refuse(issue('refusal', 'library-no-move', 'There is no move of logs to undo.'), output);
      const elsewhere = moved.logs - undone.logs;
      const rest = elsewhere > 0 ? ` ${counted(elsewhere, 'log')} had been moved on since, and stayed.` : '';
      const when = moved.movedUtc.slice(0, 16).replace('T', ' ');
      await output.answer(
        `Undone: ${counted(undone.logs, 'log')} given to ${moved.student ?? 'nobody'} at ${when} UTC ` +
          `${undone.logs === 1 ? 'is' : 'are'} back in ${undone.logs === 1 ? 'its lesson' : 'their lessons'}.${rest}\n`,
      );
      return EXIT.done;
    });
  },
};
