import { join, resolve } from 'node:path';
import type { DefinedFacility } from '../../core/analyze.ts';
import { composeDebrief, type Judging } from '../../core/debrief/compose-debrief.ts';
import type { Debrief } from '../../core/debrief/debrief.ts';
import { issue, type Issue } from '../../core/issue/issue.ts';
import type { LogSettings } from '../../core/log/log.ts';
import { debriefsCsv } from '../../core/report/debrief-csv.ts';
import { debriefText } from '../../core/report/debrief-text.ts';
import { makeFolder, writeAtomically } from '../files/write-atomically.ts';
import { EXIT, type Arguments, type Command, type ExitStatus, type Output } from './command.ts';
import { JUDGING_OPTIONS, judgingOf } from './judging-options.ts';
import { LOG_OPTIONS, logSettings } from './log-options.ts';
import { readFacility, readMaterial, refuse, tell } from './read-input.ts';

export const debrief: Command = {
  name: 'debrief',
  usage:
    'LOG... --facility F.json [--standard ID|FILE] [--target-airspeed KT] [--vref KT] [--intercept-airspeed KT] [--wind 250/18] ' +
    '[--conditions imc|simulated|vmc] [--runway seen|not-seen] [--format text|json|csv] [--out PATH]',
  purpose: 'say what happened on an approach, whether it met a standard, and how that was worked out',
  options: {
    facility: { value: 'a facility file', required: true },
    ...JUDGING_OPTIONS,
    format: { value: 'text, json or csv', oneOf: ['text', 'json', 'csv'] },
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
    const debriefs = await debriefAll(args.files, facility.value, settings.value, judging.value, output);
    if (debriefs.length === 0) return EXIT.unusable;
    return deliver(debriefs, args, output);
  },
};

/** Debriefs what can be; each log that cannot gets its sentence. */
async function debriefAll(
  paths: readonly string[],
  facility: DefinedFacility,
  settings: LogSettings,
  judging: Judging,
  output: Output,
): Promise<Debrief[]> {
  const debriefs: Debrief[] = [];
  for (const path of paths) {
    const material = await readMaterial(path, facility, settings, output);
    if (!material.ok) {
      refuse(material.refusal, output);
      continue;
    }
    tell(material.issues, output);
    debriefs.push(composeDebrief(material.value, judging));
  }
  return debriefs;
}

async function deliver(
  debriefs: readonly Debrief[],
  { files, options }: Arguments,
  output: Output,
): Promise<ExitStatus> {
  const format = options['format']?.[0] ?? 'text';
  const several = files.length > 1;
  const path = options['out']?.[0];
  if (path === undefined) {
    await output.answer(several ? allInOne(debriefs, format) : written(debriefs[0]!, format));
    return EXIT.done;
  }
  const targets = several
    ? fileNames(debriefs, format).map(([name, text]) => [join(path, name), text] as const)
    : [[path, written(debriefs[0]!, format)] as const];
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

function written(debrief: Debrief, format: string): string {
  if (format === 'csv') return debriefsCsv([debrief]);
  return format === 'json' ? `${JSON.stringify(debrief, null, 2)}\n` : debriefText(debrief);
}

function allInOne(debriefs: readonly Debrief[], format: string): string {
  if (format === 'csv') return debriefsCsv(debriefs);
  if (format === 'json') return `${JSON.stringify(debriefs, null, 2)}\n`;
  return debriefs.map(debriefText).join(`\n${'─'.repeat(100)}\n\n`);
}

/** A name for each debrief, after its log; logs of one name from different folders get numbers. */
function fileNames(debriefs: readonly Debrief[], format: string): [name: string, text: string][] {
  const ending = format === 'text' ? 'txt' : format;
  const taken = new Map<string, number>();
  return debriefs.map((debrief) => {
    const stem = debrief.log.file.replace(/\.[^.]+$/, '');
    const count = (taken.get(stem) ?? 0) + 1;
    taken.set(stem, count);
    return [`${stem}${count > 1 ? `-${count}` : ''}.debrief.${ending}`, written(debrief, format)];
  });
}

function inTheWay(path: string): Issue {
  return issue('refusal', 'file-is-input', `--out ${path} would overwrite a file that is read here.`);
}
