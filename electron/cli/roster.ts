import { EXIT, type Command } from './command.ts';
import { readText, refuse, tell } from './read-input.ts';
import { counted, LIBRARY_OPTION, withLibrary } from './with-library.ts';

export const roster: Command = {
  name: 'roster',
  usage: 'FILE.csv [--library FOLDER]',
  purpose: 'add the students and instructors of a table to the library; nobody is removed',
  options: LIBRARY_OPTION,
  minFiles: 1,
  maxFiles: 1,
  async run(args, output) {
    const [path] = args.files as [string];
    const text = readText(path);
    if (!text.ok) return refuse(text.refusal, output);
    const { rosterOf } = await import('../library/entry.ts');
    const { people, issues } = rosterOf(text.value);
    const refusal = issues.find(({ severity }) => severity === 'refusal');
    if (refusal) return refuse({ ...refusal, message: `${path} cannot be used: ${refusal.message}` }, output);
    tell(issues, output);
    return withLibrary(args, 'create', output, async (library, room) => {
      const { added, known } = room.addRoster(library, people);
      for (const { role, name } of added) await output.answer(`${name}: added as ${A[role]}\n`);
      for (const { role, name } of known) await output.answer(`${name}: was ${A[role]} here already\n`);
      const counts = [`${counted(added.length, 'person', 'people')} added`, `${known.length} here already`];
      await output.answer(`${counts.join(', ')}, ${counted(issues.length, 'line')} left out.\n`);
      return people.length > 0 ? EXIT.done : EXIT.unusable;
    });
  },
};

const A = { student: 'a student', instructor: 'an instructor' } as const;
