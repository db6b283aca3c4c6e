import { readdirSync, readFileSync, statSync } from 'node:fs';
import { basename, join, sep } from 'node:path';
import { defineFacility, type DefinedFacility } from '../../core/analyze.ts';
import { issue, refused, usable, type Outcome } from '../../core/issue/issue.ts';
import type { Job } from '../../core/log/log.ts';
import { cannotRead } from '../files/file-problems.ts';
import { isDay } from '../library/day.ts';
import type { DebriefLog } from '../library/debrief-bytes.ts';
import type { Imported, ImportAsked } from '../library/import-log.ts';
import type { Library } from '../library/library.ts';
import { EXIT, type Arguments, type Command, type ExitStatus, type Output } from './command.ts';
import { importRules, RULE_OPTIONS, type ImportRules } from './import-rules.ts';
import { issueLine } from './issue-lines.ts';
import { JUDGING_OPTIONS, judgingOf } from './judging-options.ts';
import { LOG_OPTIONS, logSettings } from './log-options.ts';
import { readFacility, refuse } from './read-input.ts';
import {
  counted,
  doneWithout,
  LIBRARY_OPTION,
  stoppable,
  withDebriefers,
  withLibrary,
  WORKERS_OPTION,
  type LibraryRoom,
} from './with-library.ts';

export const importLogs: Command = {
  name: 'import',
  usage:
    'LOG|FOLDER... [--facility F.json]... [--student NAME | --student-from folder|"column:HEADER" ' +
    '[--bookings FILE.csv] [--add-students yes]] [--date 2026-05-01] [--again yes] [--library FOLDER] ' +
    '[what debrief takes to state]; or --from EXPORTED',
  purpose: 'keep logs and their debriefs in the library, or take in what another library exported',
  options: {
    ...LIBRARY_OPTION,
    student: { value: 'who flew' },
    ...RULE_OPTIONS,
    date: { value: 'the day of the lesson, as 2026-05-01; the day on which a log begins when not said' },
    facility: {
      value: 'a facility file to try; the facilities in the library when not said',
      repeatable: true,
    },
    again: {
      value: 'yes, to make what is kept of these logs anew by what is stated now',
      oneOf: ['yes', 'no'],
    },
    ...WORKERS_OPTION,
    from: { value: 'a folder that `halfdot export` made' },
    ...JUDGING_OPTIONS,
    ...LOG_OPTIONS,
  },
  minFiles: 0,
  maxFiles: Infinity,
  async run(args, output) {
    const from = args.options['from']?.[0];
    if (from !== undefined) return takeIn(args, from, output);
    if (args.files.length === 0)
      return refuse(
        issue(
          'refusal',
          'arguments',
          'halfdot import needs the name of a log or of a folder with logs, or --from.',
        ),
        output,
      );
    const asked = askedOf(args);
    if (!asked.ok) return refuse(asked.refusal, output);
    const paths = logsIn(args.files);
    if (!paths.ok) return refuse(paths.refusal, output);
    const rules = await importRules(args, output);
    if (!rules.ok) return refuse(rules.refusal, output);
    return withLibrary(args, 'create', output, async (library, room) => {
      const facilities = facilitiesOf(asked.value.facilities, library, room);
      if (!facilities.ok) return refuse(facilities.refusal, output);
      const job = output.job('Importing');
      return stoppable(job, (watched) =>
        importAll(
          args,
          paths.value,
          { ...asked.value, facilities: facilities.value },
          rules.value,
          library,
          room,
          watched,
          output,
        ),
      );
    });
  },
};

/** A log, and where it lies below the folder that was named: folders, and its file name at the end. */
interface LogPlace {
  readonly path: string;
  readonly below: readonly string[];
}

type Facilities = ImportAsked['facilities'];
type Asked = Omit<ImportAsked, 'facilities'> & { readonly facilities: readonly DefinedFacility[] };

function askedOf(args: Arguments): Outcome<Asked> {
  const { options } = args;
  const settings = logSettings(args);
  if (!settings.ok) return settings;
  const judging = judgingOf(args);
  if (!judging.ok) return judging;
  const date = options['date']?.[0] ?? null;
  if (date !== null && !isDay(date))
    return refused('arguments', `--date ${date} is no day.`, { tip: 'Write it as 2026-05-01.' });
  const facilities: DefinedFacility[] = [];
  for (const path of options['facility'] ?? []) {
    const facility = readFacility(path);
    if (!facility.ok) return facility;
    facilities.push(facility.value);
  }
  const student = options['student']?.[0]?.trim() ?? null;
  if (student === '') return refused('arguments', '--student needs a name.');
  return usable({
    settings: settings.value,
    judging: judging.value,
    date,
    student,
    facilities,
    areFacilitiesNamed: facilities.length > 0,
    isStandardNamed: options['standard'] !== undefined,
    isAnew: options['again']?.[0] === 'yes',
  });
}

/** Those that are given, else those of the library. */
function facilitiesOf(
  given: readonly DefinedFacility[],
  library: Library,
  room: LibraryRoom,
): Outcome<Facilities> {
  const kept = given.length > 0 ? [] : room.listFacilities(library);
  const defined = kept.flatMap((text) => {
    const facility = defineFacility(text, 'library');
    return facility.ok ? [facility.value] : [];
  });
  const [first, ...others] = given.length > 0 ? given : defined;
  return first
    ? usable([first, ...others])
    : refused('arguments', 'The library holds no facility yet.', { tip: 'Name one with --facility.' });
}

/** The logs that are named, and those in the folders that are. */
function logsIn(named: readonly string[]): Outcome<LogPlace[]> {
  const paths: LogPlace[] = [];
  for (const path of named) {
    try {
      if (!statSync(path).isDirectory()) paths.push({ path, below: [basename(path)] });
      else {
        const names = readdirSync(path, { recursive: true, encoding: 'utf8' }).sort();
        const logs = names.filter((name) => /\.(csv|gpx)$/i.test(name));
        paths.push(...logs.map((name) => ({ path: join(path, name), below: name.split(sep) })));
      }
    } catch (error) {
      return cannotRead(path, error);
    }
  }
  return paths.length > 0
    ? usable(paths)
    : refused('library-no-logs', `There is no log in ${named.join(', ')}.`, {
        tip: 'A log ends in .csv or .gpx.',
      });
}

/** The logs in their order, each kept before its line; what is here already is said and skipped. */
async function importAll(
  args: Arguments,
  paths: readonly LogPlace[],
  asked: ImportAsked,
  rules: ImportRules | null,
  library: Library,
  room: LibraryRoom,
  job: Job,
  output: Output,
): Promise<ExitStatus> {
  const count = { kept: 0, known: 0, refused: 0 };
  const names = shownNames(paths);
  const importOne = async ({ path, below }: LogPlace, debrief: DebriefLog) => {
    const name = basename(path);
    const bytes = bytesOf(path);
    if (!bytes.ok) return room.nothingToKeep({ imported: bytes, kept: () => {} });
    const log = { name, bytes: bytes.value };
    const ruled = rules?.begin({ below, bytes: log.bytes, asked }, library, room);
    const ofLog = { ...asked, ...(ruled && { rule: ruled.rule }) };
    const job = output.job(`Reading ${name}`);
    const { logs, keep } = await room.importLog(library, log, ofLog, job, debrief);
    return { logs, keep: () => ({ imported: keep(), kept: () => ruled?.kept() }) };
  };
  return withDebriefers(args, room, paths.length, async (pool) => {
    let done = 0;
    for await (const part of room.inTurn(library, paths, pool, importOne)) {
      for (const { imported, kept } of part) {
        const became = await told(names[done++]!, imported, room, output);
        count[became]++;
        if (became === 'kept') kept();
      }
      job.progress(done / paths.length);
      // Lets a Ctrl-C in.
      await new Promise((resolve) => setImmediate(resolve));
      if (job.cancelled() && done < paths.length) {
        rules?.tell(output);
        output.message(`${summary(count)} Stopped; run the same again to go on.`);
        return EXIT.unusable;
      }
    }
    await output.answer(`${summary(count)}${rules?.givenTo() ?? ''}\n`);
    rules?.tell(output);
    return count.kept + count.known > 0 ? EXIT.done : EXIT.unusable;
  });
}

function bytesOf(path: string): Outcome<Uint8Array> {
  try {
    return usable(readFileSync(path));
  } catch (error) {
    return cannotRead(path, error);
  }
}

/** What each log goes by: its path below the folder that was named, or its whole path where another has the same. */
function shownNames(paths: readonly LogPlace[]): string[] {
  const below = paths.map((place) => place.below.join('/'));
  const count = new Map<string, number>();
  for (const name of below) count.set(name, (count.get(name) ?? 0) + 1);
  return paths.map(({ path }, i) => (count.get(below[i]!)! > 1 ? path : below[i]!));
}

/** Says what became of a log, and what has to be known of how it was read. */
async function told(
  name: string,
  imported: Outcome<Imported>,
  room: LibraryRoom,
  output: Output,
): Promise<'kept' | 'known' | 'refused'> {
  if (!imported.ok) {
    const { refusal } = imported;
    const isBare = name === basename(name);
    refuse(isBare ? refusal : { ...refusal, message: `${name}: ${refusal.message}` }, output);
    return 'refused';
  }
  const became = await toldOf(name, imported.value, output);
  for (const one of room.worthAsking(imported.issues)) output.message(`  ${name}: ${issueLine(one)}`);
  return became;
}

async function toldOf(name: string, imported: Imported, output: Output): Promise<'kept' | 'known'> {
  if (imported.became === 'known') {
    const { fileName, triedAt } = imported;
    const as = fileName === basename(name) ? '' : ` as ${fileName}`;
    const found = triedAt.length === 0 ? 'skipped' : `no approach was found at ${triedAt.join(' or ')}`;
    output.message(`${name} is in the library already${as}: ${found}.`);
    return 'known';
  }
  const { approaches, facilities, student, stays } = imported;
  const kept = student === null ? 'kept' : `kept for ${student}`;
  const found =
    approaches === 0
      ? `${kept}; no approach was found, at no facility that was tried`
      : `${kept}, ${counted(approaches, 'approach', 'approaches')} at ${facilities.join(' and ')}`;
  await output.answer(`${name}: ${found}\n`);
  if (stays) {
    const whose = stays.student === null ? 'without a student' : `of ${stays.student}`;
    output.message(`${name} was in the library already, and stays in the lesson ${whose} on ${stays.date}.`);
  }
  return 'kept';
}

function summary({ kept, known, refused }: Record<'kept' | 'known' | 'refused', number>): string {
  const parts = [`${counted(kept, 'log')} kept`, `${known} known already`, `${refused} refused`];
  return `${parts.join(', ')}.`;
}

const USE_WITHOUT =
  'Their debriefs can be listed and read, but not made anew; `halfdot check` tells of each that its file is missing.';

function takeIn(args: Arguments, from: string, output: Output): Promise<ExitStatus> {
  const beside = Object.keys(args.options).filter((option) => option !== 'from' && option !== 'library');
  const what = args.files.length > 0 ? 'logs' : beside.map((option) => `--${option}`).join(' or ');
  if (what !== '') {
    const message = `--from takes in an exported library, and no ${what} beside it.`;
    return Promise.resolve(refuse(issue('refusal', 'arguments', message), output));
  }
  return withLibrary(args, 'create', output, (library, room) =>
    stoppable(output.job('Taking in'), async (job) => {
      const { added, missing, withoutLogs } = await room.mergeExport(library, from, room.watchBy(job));
      await output.answer(`${counted(added, 'entry', 'entries')} taken in from ${from}.\n`);
      if (withoutLogs) {
        const logs = counted(missing.length, 'log');
        if (missing.length > 0)
          output.message(
            `The export was made without logs, and ${logs} came without the file. ${USE_WITHOUT}`,
          );
        return EXIT.done;
      }
      return doneWithout(missing, 'missing or damaged in the export came without the file', output);
    }),
  );
}
