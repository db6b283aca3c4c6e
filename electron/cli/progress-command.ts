import { issue, type Issue } from '../../core/issue/issue.ts';
import { GROUP_BY } from '../bridge/progress-groups.ts';
import { EXIT, type Command } from './command.ts';
import { refuse } from './read-input.ts';
import { LIBRARY_OPTION, stoppable, withLibrary } from './with-library.ts';

/** What says which part of a school is looked at; a student's record has all of it. */
const OF_SCHOOL = {
  measure: { value: 'level, or a criterion as glidepath-final; level when not said' },
  by: { value: 'which groups are held side by side', oneOf: GROUP_BY },
  from: { value: 'the first day, as 2026-03-01' },
  to: { value: 'the last day' },
  flown: { value: 'those flown so alone', oneOf: ['hand-flown', 'coupled', 'not-stated'] },
  aircraft: { value: 'those flown in it alone', repeatable: true },
  conditions: { value: 'those alone', oneOf: ['imc', 'simulated', 'vmc', 'not-stated'] },
  names: { value: 'yes, to show names in place of numbers', oneOf: ['yes'] },
} as const;

export const progress: Command = {
  name: 'progress',
  usage:
    '[--student NAME] [--measure level|CRITERION] [--by instructor|aircraft|…] [--from DATE] [--to DATE] ' +
    '[--flown hand-flown|coupled] [--aircraft NAME]... [--conditions imc|simulated|vmc] [--names yes] ' +
    '[--format text|json|csv|html] [--library FOLDER]',
  purpose: 'tell how a student goes on from lesson to lesson, or what the students of a school need',
  options: {
    ...LIBRARY_OPTION,
    student: { value: 'whose lessons are meant; all students when not said' },
    ...OF_SCHOOL,
    format: { value: 'text, json, csv or, of a student, html', oneOf: ['text', 'json', 'csv', 'html'] },
  },
  minFiles: 0,
  maxFiles: 0,
  async run(args, output) {
    const { options } = args;
    const name = options['student']?.[0];
    const format = options['format']?.[0] ?? 'text';
    const odd = Object.keys(OF_SCHOOL).find((option) => options[option] !== undefined);
    if (name !== undefined && odd !== undefined)
      return refuse(
        usage(`--${odd} is for all students, and not for one: leave it or --student out.`),
        output,
      );
    if (name === undefined && format === 'html')
      return refuse(usage('A page is made of one student: say whose with --student.'), output);
    return withLibrary(args, 'existing', output, (library, room) =>
      stoppable(output.job('Reading debriefs'), async (job) => {
        // Loaded when it is asked for: no other command does with it.
        const records = await import('./progress-record.ts');
        const watch = room.watchBy(job);
        const made =
          name === undefined
            ? await records.schoolRecord(library, room, options, format, watch)
            : await records.studentRecord(library, room, name, format, watch);
        if (!made.ok) return refuse(made.refusal, output);
        await output.answer(made.value);
        return EXIT.done;
      }),
    );
  },
};

function usage(message: string): Issue {
  return issue('refusal', 'arguments', message);
}
