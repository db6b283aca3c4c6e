import { refused, usable, type Outcome } from '../../core/issue/issue.ts';
import type { Arguments, Command } from './command.ts';

interface Word {
  readonly option: string | null;
  readonly value: string | undefined;
}

/**
 * Reads a command's words: `--name value` or `--name=value`, files in any order, `--` ends the options. Anything
 * the command does not know is refused by name.
 */
export function parseArguments(command: Command, words: readonly string[]): Outcome<Arguments> {
  const files: string[] = [];
  const options: Record<string, string[]> = {};
  for (const { option, value } of grouped(words)) {
    if (option === null) {
      files.push(value!);
      continue;
    }
    const wrong = wrongOption(command, option, value, Object.hasOwn(options, option));
    if (wrong) return usageError(command, wrong);
    (options[option] ??= []).push(value!);
  }
  const missing = Object.keys(command.options).find(
    (name) => command.options[name]!.required && !options[name],
  );
  if (files.length < command.minFiles)
    return usageError(command, `halfdot ${command.name} needs the name of a file.`);
  if (files.length > command.maxFiles)
    return usageError(command, `halfdot ${command.name} takes one file; ${files.length} are named.`);
  if (missing)
    return usageError(
      command,
      `halfdot ${command.name} needs --${missing}: ${command.options[missing]!.value}.`,
    );
  return usable({ files, options });
}

function grouped(words: readonly string[]): Word[] {
  const found: Word[] = [];
  let optionsEnded = false;
  for (let i = 0; i < words.length; i++) {
    const word = words[i]!;
    if (word === '--' && !optionsEnded) optionsEnded = true;
    else if (optionsEnded || !word.startsWith('--')) found.push({ option: null, value: word });
    else if (word.includes('=')) {
      const at = word.indexOf('=');
      found.push({ option: word.slice(2, at), value: word.slice(at + 1) });
    } else {
      const next = words[i + 1];
      const hasValue = next !== undefined && !next.startsWith('--');
      found.push({ option: word.slice(2), value: hasValue ? next : undefined });
      if (hasValue) i++;
    }
  }
  return found;
}

/** What is wrong with one option, as a sentence; null when nothing is. */
function wrongOption(
  command: Command,
  name: string,
  value: string | undefined,
  seen: boolean,
): string | null {
  const option = Object.hasOwn(command.options, name) ? command.options[name] : undefined;
  if (!option) return `halfdot ${command.name} does not know the option --${name}.`;
  if (seen && !option.repeatable) return `--${name} is given twice.`;
  if (!value) return `--${name} needs a value: ${option.value}.`;
  if (option.oneOf && !option.oneOf.includes(value))
    return `--${name} is ${option.oneOf.join(' or ')}; "${value}" is none of them.`;
  return null;
}

function usageError(command: Command, message: string): Outcome<never> {
  return refused('arguments', message, { tip: `Use: halfdot ${command.name} ${command.usage}` });
}
