import { resolve } from 'node:path';
import { decimalYear } from '../../core/earth/magnetic.ts';
import { checkFacility } from '../../core/facility/contradictions.ts';
import { deriveGeometry } from '../../core/facility/derive-geometry.ts';
import { parseFacility } from '../../core/facility/parse-facility.ts';
import { refused, usable, type Issue, type Outcome } from '../../core/issue/issue.ts';
import { cycleIssue } from '../../core/records/cycle-issue.ts';
import { draftFromRecords } from '../../core/records/draft-from-records.ts';
import type { Drafted } from '../../core/records/drafted.ts';
import { draftFile } from '../../core/records/draft-file.ts';
import { findIls, ilsIn, type ListedIls } from '../../core/records/ils-listing.ts';
import type { RecordsIndex } from '../../core/records/records-index.ts';
import { scanRecords } from '../../core/records/scan-records.ts';
import { draftedText, recordsText } from '../../core/report/records-text.ts';
import { listed } from '../../core/units/listed.ts';
import { openLog } from '../files/open-log.ts';
import { writeAtomically } from '../files/write-atomically.ts';
import type { Arguments, Output } from './command.ts';

/** What the records say to a command line: a list, or the facility that it names. */
export async function answerFromRecords(args: Arguments, output: Output): Promise<Outcome<string>> {
  const day = dayOf(args.options['day']?.[0]);
  if (!day.ok) return day;
  const source = openLog(args.files[0]!);
  if (!source.ok) return source;
  const { name, size, chunks } = source.value;
  const index = await scanRecords(chunks, size, output.job(`Reading ${name}`));
  if (!index.ok) return index;
  const { runway, localizer } = args.options;
  return runway === undefined && localizer === undefined
    ? list(index.value, args, day.value)
    : facilityAnswer(index.value, args, day.value);
}

function dayOf(text: string | undefined): Outcome<string> {
  if (text === undefined) return usable(new Date().toISOString().slice(0, 10));
  const isDay = /^\d{4}-\d\d-\d\d$/.test(text) && !Number.isNaN(Date.parse(text));
  return isDay ? usable(text) : refused('arguments', `--day is a day such as 2026-03-14; "${text}" is none.`);
}

function chosen(index: RecordsIndex, { options }: Arguments): ListedIls[] {
  const airport = options['airport']?.[0]?.toUpperCase();
  const runway = options['runway']?.[0]?.toUpperCase();
  const localizer = options['localizer']?.[0]?.toUpperCase();
  return findIls(ilsIn(index), options['find']?.[0] ?? '').filter(
    (ils) =>
      (airport === undefined || ils.airport === airport) &&
      (runway === undefined || ils.runway === runway.padStart(2, '0')) &&
      (localizer === undefined || ils.localizer === localizer),
  );
}

function list(index: RecordsIndex, args: Arguments, day: string): Outcome<string> {
  const ils = chosen(index, args);
  const { airports: _, ...told } = index;
  const stale = cycleIssue(index.cycle, day);
  const issues = [...index.issues, ...(stale === null ? [] : [stale])];
  if (args.options['out'] !== undefined)
    return refused('arguments', '--out writes one facility: say which with --airport and --runway.');
  const asJson = args.options['format']?.[0] === 'json';
  return usable(asJson ? json({ ...told, issues, ils }) : recordsText(index, ils), issues);
}

function facilityAnswer(index: RecordsIndex, args: Arguments, day: string): Outcome<string> {
  const { options } = args;
  const ils = oneOf(chosen(index, args));
  if (!ils.ok) return ils;
  const procedure = options['procedure']?.[0]?.toUpperCase();
  const { airport, localizer } = ils.value;
  const drafted = draftFromRecords(index, {
    airport,
    localizer,
    onDay: day,
    ...(procedure === undefined ? {} : { procedure }),
  });
  const refusal = drafted.issues.find(({ severity }) => severity === 'refusal');
  if (refusal !== undefined) return { ok: false, refusal, issues: [] };
  const issues = [...drafted.issues, ...checked(drafted, day)];
  const out = options['out']?.[0];
  const written = out === undefined ? usable('') : write(drafted, out, args);
  if (!written.ok) return written;
  const asJson = options['format']?.[0] === 'json';
  return usable(asJson ? json({ ...drafted, issues }) : draftedText(drafted, issues), index.issues);
}

/** What was asked for has to be one. */
function oneOf(found: readonly ListedIls[]): Outcome<ListedIls> {
  const [first] = found;
  if (first === undefined)
    return refused('records-nothing-found', 'The records hold no such localizer.', {
      tip: 'Without --runway the command lists what there is.',
    });
  if (found.length === 1) return usable(first);
  const there = listed(found.slice(0, 5).map(({ airport, localizer }) => `${localizer} at ${airport}`));
  return refused('records-several-found', `That is more than one localizer: ${there}.`, {
    tip: 'Say which with --airport and --localizer.',
  });
}

function checked({ facility }: Drafted, day: string): readonly Issue[] {
  const parsed = parseFacility(JSON.stringify(facility), 'The facility as drafted');
  if (!parsed.ok) return parsed.issues;
  const year = decimalYear(Date.parse(day) / 1000);
  return checkFacility(parsed.value, deriveGeometry(parsed.value), year);
}

/** With where each value is from. One that is not whole is not written. */
function write(drafted: Drafted, path: string, { files }: Arguments): Outcome<string> {
  if (files.some((file) => resolve(file) === resolve(path)))
    return refused('file-is-input', `--out ${path} would overwrite a file that is read here.`);
  const text = draftFile(drafted);
  const parsed = parseFacility(text, path);
  return parsed.ok ? writeAtomically(path, text) : parsed;
}

function json(value: unknown): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}
