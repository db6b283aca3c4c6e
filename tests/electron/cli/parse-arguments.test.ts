import { describe, expect, it } from 'vitest';
import type { Command } from '../../../electron/cli/command.ts';
import { parseArguments } from '../../../electron/cli/parse-arguments.ts';

const COMMAND: Command = {
  name: 'weigh',
  usage: 'LOG --facility F.json',
  purpose: 'weigh a log',
  options: {
    facility: { value: 'a facility file', required: true },
    format: { value: 'text or json', oneOf: ['text', 'json'] },
    column: { value: 'a column', repeatable: true },
  },
  minFiles: 1,
  maxFiles: 1,
  run: async () => 0,
};
const parse = (...words: string[]) => parseArguments(COMMAND, words);
const refusal = (...words: string[]) => {
  const outcome = parse(...words);
  return outcome.ok ? null : outcome.refusal;
};

describe('parseArguments', () => {
  it('takes files and options in any order, with a space or an equals sign', () => {
    const expected = { files: ['a.csv'], options: { facility: ['f.json'], format: ['json'] } };
    expect(parse('a.csv', '--facility', 'f.json', '--format=json')).toMatchObject({
      ok: true,
      value: expected,
    });
    expect(parse('--format', 'json', '--facility=f.json', 'a.csv')).toMatchObject({
      ok: true,
      value: expected,
    });
  });

  it('takes every word after -- for a file', () => {
    expect(parse('--facility=f', '--', '--odd.csv')).toMatchObject({ value: { files: ['--odd.csv'] } });
  });

  it('keeps equals signs in a value, and values of an option that repeats', () => {
    expect(
      parse('a', '--facility=f', '--column', 'Alt=altitudeIndicatedFt', '--column=B=none'),
    ).toMatchObject({
      value: { options: { column: ['Alt=altitudeIndicatedFt', 'B=none'] } },
    });
  });

  it.each([
    [
      'an option it does not know',
      ['a', '--facility=f', '--colour', 'x'],
      'does not know the option --colour',
    ],
    [
      'a name that every object has',
      ['a', '--facility=f', '--constructor=x'],
      'does not know the option --constructor',
    ],
    ['an option without its value', ['a', '--facility'], '--facility needs a value: a facility file.'],
    ['an option followed by an option', ['a', '--facility', '--format', 'json'], '--facility needs a value'],
    ['an empty value', ['a', '--facility='], '--facility needs a value'],
    ['an option given twice', ['a', '--facility=f', '--facility=g'], '--facility is given twice'],
    ['a value that is none of the few', ['a', '--facility=f', '--format=pdf'], '"pdf" is none of them'],
    ['a missing option', ['a'], 'needs --facility: a facility file.'],
    ['no file', ['--facility=f'], 'needs the name of a file'],
    ['too many files', ['a', 'b', '--facility=f'], 'takes one file; 2 are named'],
  ])('refuses %s, and says how it is used', (_name, words, message) => {
    expect(refusal(...words)!.message).toContain(message);
    expect(refusal(...words)).toMatchObject({
      code: 'arguments',
      tip: 'Use: halfdot weigh LOG --facility F.json',
    });
  });
});
