import { EXIT, type Command } from './command.ts';
import { refuse, tell } from './read-input.ts';

export const records: Command = {
  name: 'records',
  usage:
    'FILE [--find WORDS] [--airport IDENT] [--runway 17R] [--localizer IDENT] [--procedure IDENT] [--day DATE] ' +
    '[--format text|json] [--out F.json]',
  purpose: 'list the localizers in a file of official records, or make a facility file of one',
  options: {
    find: { value: 'words of an airport, a runway or a localizer' },
    airport: { value: 'the ident of an airport' },
    runway: { value: 'the runway whose facility is meant, as 17R' },
    localizer: { value: 'the ident of its localizer, where a runway has several' },
    procedure: { value: 'the procedure to take the fix of, as I17RZ, where there are several' },
    day: { value: 'the day of the flight, as 2026-03-14; today when not said' },
    format: { value: 'text or json', oneOf: ['text', 'json'] },
    out: { value: 'where to write the facility file' },
  },
  minFiles: 1,
  maxFiles: 1,
  async run(args, output) {
    // Loaded when it is asked for: no other command does with it.
    const { answerFromRecords } = await import('./records-answer.ts');
    const answer = await answerFromRecords(args, output);
    if (!answer.ok) return refuse(answer.refusal, output);
    tell(answer.issues, output);
    await output.answer(answer.value);
    return EXIT.done;
  },
};
