import { join, resolve } from 'node:path';
import { compose } from '../../core/debrief/compose-debrief.ts';
import { issue, type Issue } from '../../core/issue/issue.ts';
import { makeFolder, writeAtomically } from '../files/write-atomically.ts';
import { EXIT, type Arguments, type Command, type ExitStatus, type Output } from './command.ts';
import { debriefFormat, FORMAT_NAMES, type DebriefFormat } from './debrief-formats.ts';
import { JUDGING_OPTIONS, judgingOf } from './judging-options.ts';
import { LOG_OPTIONS, logSettings } from './log-options.ts';
import { readFacility, readMaterial, refuse, tell } from './read-input.ts';

export const debrief: Command = {
  name: 'debrief',
  usage:
    'LOG... --facility F.json [--standard ID|FILE] [--target-airspeed KT] [--vref KT] [--intercept-airspeed KT] [--wind 250/18] ' +
    '[--conditions imc|simulated|vmc] [--runway seen|not-seen] [--format text|json|csv|html|geojson] [--out PATH]',
  purpose: 'say what happened on an approach, whether it met a standard, and how that was worked out',
  options: {
    facility: { value: 'a facility file', required: true },
    ...JUDGING_OPTIONS,
    format: {
      value: 'text, json or csv; html for a page to hand over; geojson for a map',
      oneOf: FORMAT_NAMES,
    },
    out: { value: 'where to write: a file, or with several logs a folder' },
    ...LOG_OPTIONS,
  },
  minFiles: 1,
  maxFiles: Infinity,
  async run(args, output) {
    const settings = logSettings(args);
    if (!settings.ok) return refuse(settings.refusal, output);
    const facility = readFacility(args.options['facility']![0]!);
    if (!facility.ok) return refuse(facility.refusal, output);
    const judging = judgingOf(args);
    if (!judging.ok) return refuse(judging.refusal, output);
    const format = await debriefFormat(args.options['format']?.[0] ?? 'text');
    const answers: Answer[] = [];
    for (const path of args.files) {
      // Each log that cannot be read gets its sentence.
      const material = await readMaterial(path, facility.value, settings.value, output);
      if (!material.ok) {
        refuse(material.refusal, output);
        continue;
      }
      tell(material.issues, output);
      const composed = compose(material.value, judging.value);
      answers.push({ log: composed.debrief.log.file, part: format.partOf(composed) });
    }
    if (answers.length === 0) return EXIT.unusable;
    return deliver(answers, format, args, output);
  },
};

/** What a format made of one log. */
interface Answer {
  readonly log: string;
  readonly part: unknown;
}

async function deliver(
  answers: readonly Answer[],
  format: DebriefFormat,
  { files, options }: Arguments,
  output: Output,
): Promise<ExitStatus> {
  const several = files.length > 1;
  const path = options['out']?.[0];
  const [{ part: first }] = answers as [Answer];
  if (path === undefined) {
    const parts = answers.map(({ part }) => part);
    await output.answer(several ? format.allInOne(parts) : format.written(first));
    return EXIT.done;
  }
  const targets = several
    ? fileNames(answers, format).map(([name, text]) => [join(path, name), text] as const)
    : [[path, format.written(first)] as const];
  // A slip in the command line must not cost anybody a log.
  const inputs = new Set([...files, ...options['facility']!].map((input) => resolve(input)));
  const overwritten = targets.find(([target]) => inputs.has(resolve(target)));
  if (overwritten) return refuse(inTheWay(overwritten[0]), output);
  const folder = several ? makeFolder(path) : null;
  if (folder && !folder.ok) return refuse(folder.refusal, output);
  for (const [target, text] of targets) {
    const result = writeAtomically(target, text);
    if (!result.ok) return refuse(result.refusal, output);
  }
  return EXIT.done;
}

/** A name for each debrief, after its log; logs of one name from different folders get numbers. */
function fileNames(answers: readonly Answer[], format: DebriefFormat): [name: string, text: string][] {
  const taken = new Map<string, number>();
  return answers.map(({ log, part }) => {
    const stem = log.replace(/\.[^.]+$/, '');
    const count = (taken.get(stem) ?? 0) + 1;
    taken.set(stem, count);
    return [`${stem}${count > 1 ? `-${count}` : ''}.debrief.${format.ending}`, format.written(part)];
  });
}

function inTheWay(path: string): Issue {
  return issue('refusal', 'file-is-input', `--out ${path} would overwrite a file that is read here.`);
}
