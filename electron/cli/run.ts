import { CAUTIONS } from '../../core/debrief/cautions.ts';
import { EXIT, type Command, type ExitStatus, type Output } from './command.ts';
import { app } from './app.ts';
import { assign } from './assign.ts';
import { backup } from './backup.ts';
import { brief } from './brief.ts';
import { check } from './check.ts';
import { debrief } from './debrief.ts';
import { deleteStudent } from './delete.ts';
import { deviations } from './deviations.ts';
import { exportLibrary } from './export.ts';
import { facility } from './facility.ts';
import { importLogs } from './import.ts';
import { inspect } from './inspect.ts';
import { list } from './list.ts';
import { parseArguments } from './parse-arguments.ts';
import { progress } from './progress-command.ts';
import { refuse } from './read-input.ts';
import { recompute } from './recompute.ts';
import { records } from './records.ts';
import { restore } from './restore.ts';
import { roster } from './roster.ts';
import { undo } from './undo.ts';

const COMMANDS: readonly Command[] = [
  debrief,
  deviations,
  inspect,
  facility,
  records,
  brief,
  app,
  roster,
  importLogs,
  assign,
  undo,
  list,
  progress,
  recompute,
  backup,
  restore,
  exportLibrary,
  check,
  deleteStudent,
];

/** Runs one command line and gives its exit status. An error thrown in here is our own fault. */
export async function run(words: readonly string[], output: Output): Promise<ExitStatus> {
  const [name, ...rest] = words;
  if (name === undefined || name === 'help' || name === '--help') {
    await output.answer(help());
    return EXIT.done;
  }
  const command = COMMANDS.find((known) => known.name === name);
  if (!command) {
    output.message(
      `halfdot: there is no command "${name}". Use: halfdot ${COMMANDS.map(nameOf).join(' | ')}`,
    );
    return EXIT.unusable;
  }
  if (rest.includes('--help')) {
    await output.answer(commandHelp(command));
    return EXIT.done;
  }
  const args = parseArguments(command, rest);
  return args.ok ? command.run(args.value, output) : refuse(args.refusal, output);
}

function nameOf({ name }: Command): string {
  return name;
}

function help(): string {
  const commands = COMMANDS.map(({ name, usage, purpose }) => `  halfdot ${name} ${usage}\n      ${purpose}`);
  return [
    'Halfdot: what the needles showed on an ILS approach, from a track log.',
    commands.join('\n'),
    'halfdot COMMAND --help lists its options.',
    CAUTIONS.join('\n'),
    '',
  ].join('\n\n');
}

function commandHelp({ name, usage, purpose, options }: Command): string {
  const lines = Object.entries(options).map(([option, { value }]) => `  --${option.padEnd(14)} ${value}`);
  return [`halfdot ${name} ${usage}\n  ${purpose}`, lines.join('\n'), ''].join('\n\n');
}
